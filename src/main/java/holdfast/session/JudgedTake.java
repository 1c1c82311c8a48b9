package holdfast.session;

import holdfast.motif.Motif;
import java.util.List;
import java.util.Optional;

/**
 * A take that has been heard to its end.
 *
 * @param setting what was known before
 * @param idea the idea that everything was held against; empty where nothing was played
 * @param phrases every phrase in order, with what is said about it
 * @param counts what it comes to
 * @param afterthoughts what only the whole take could tell, and was told otherwise while it ran
 */
public record JudgedTake(
    Setting setting,
    Optional<Motif> idea,
    List<JudgedPhrase> phrases,
    Counts counts,
    List<Afterthought> afterthoughts) {

  /** Copies. */
  public JudgedTake {
    phrases = List.copyOf(phrases);
    afterthoughts = List.copyOf(afterthoughts);
  }

  /**
   * The same take under a teacher's words, which count in everything; of several about one phrase
   * the last counts. A word about no phrase of this take changes nothing.
   */
  public JudgedTake overruledBy(List<Overruling> rulings) {
    List<JudgedPhrase> told = phrases.stream().map(phrase -> under(rulings, phrase)).toList();
    List<Afterthought> left =
        afterthoughts.stream()
            .map(a -> new Afterthought(a.kind(), told.get(a.phrase().index())))
            .filter(
                a -> a.kind() != Afterthought.Kind.HEARD_ANEW || a.phrase().overruled().isEmpty())
            .toList();
    return new JudgedTake(setting, idea, told, Counts.of(told), left);
  }

  private static JudgedPhrase under(List<Overruling> rulings, JudgedPhrase phrase) {
    JudgedPhrase told = phrase;
    for (Overruling ruling : rulings) {
      if (ruling.isAbout(phrase)) {
        told = phrase.overruledBy(ruling);
      }
    }
    return told;
  }

  /** How many choruses the take reaches into; at least 1. */
  public int choruses() {
    return phrases.stream().mapToInt(p -> p.place().chorus()).max().orElse(1);
  }
}
