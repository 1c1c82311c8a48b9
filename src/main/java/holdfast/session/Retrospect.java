package holdfast.session;

import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Hindsight;
import holdfast.motif.IdeaCost;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.PhraseReading;
import holdfast.motif.Verdict;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseRevision;
import holdfast.phrase.Revision;
import holdfast.session.Afterthought.Kind;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A take read again once it is over: cuts and treatments found together over the whole of it. What
 * was said live is not taken back silently; each difference becomes an {@link Afterthought}.
 */
final class Retrospect {

  /** Makes a phrase of the coach's out of a cut and a verdict. */
  @FunctionalInterface
  interface Telling {
    JudgedPhrase tell(int index, boolean statesTheIdea, Phrase phrase, Verdict verdict);
  }

  private final List<Phrase> cuts;
  private final List<JudgedPhrase> live;
  private final Revision revision;
  private final Hindsight hindsight;
  private final boolean ideaWasPlayed;

  /**
   * Reads a take again.
   *
   * @param cuts phrases as they were cut live
   * @param live what was said of each
   * @param liveStands whether each was held live against this very idea in this very context
   * @param inBeats the notes of a phrase in beats of the take
   */
  Retrospect(
      List<Phrase> cuts,
      List<JudgedPhrase> live,
      Motif idea,
      boolean ideaWasPlayed,
      boolean liveStands,
      Function<Phrase, List<Note>> inBeats,
      MotifJudge judge,
      Context context) {
    this.cuts = cuts;
    this.live = live;
    this.ideaWasPlayed = ideaWasPlayed;
    List<Note> all = cuts.stream().flatMap(p -> inBeats.apply(p).stream()).toList();
    this.revision = PhraseRevision.of(cuts, new IdeaCost(judge, idea, all, context));
    List<List<Note>> phrases = revision.phrases().stream().map(inBeats).toList();
    IdentityHashMap<Phrase, Verdict> known = new IdentityHashMap<>();
    for (int k = 0; k < cuts.size() && liveStands; k++) {
      known.put(cuts.get(k), live.get(k).verdict());
    }
    List<Verdict> first = new ArrayList<>();
    for (int k = 0; k < phrases.size(); k++) {
      Verdict said = known.get(revision.phrases().get(k));
      first.add(said != null ? said : judge.compare(idea, phrases.get(k), context));
    }
    this.hindsight = Hindsight.read(judge, idea, phrases, context, first);
  }

  /** The phrases as they are told now. */
  List<JudgedPhrase> phrases(Telling telling) {
    List<JudgedPhrase> told = new ArrayList<>();
    for (int k = 0; k < revision.phrases().size(); k++) {
      PhraseReading reading = hindsight.phrases().get(k);
      boolean states = (k == 0 && ideaWasPlayed) || reading.statesNewIdea();
      told.add(telling.tell(k, states, revision.phrases().get(k), reading.verdict()));
    }
    return List.copyOf(told);
  }

  /** What differs from what was said live, or could not be said then, in order. */
  List<Afterthought> afterthoughts(List<JudgedPhrase> told) {
    List<Afterthought> thoughts = new ArrayList<>();
    for (int k = 0; k < told.size(); k++) {
      JudgedPhrase phrase = told.get(k);
      Optional<Kind> regrouped = regrouped(k);
      if (hindsight.phrases().get(k).statesNewIdea()) {
        thoughts.add(new Afterthought(Kind.NEW_IDEA, phrase));
      } else if (regrouped.isPresent()) {
        thoughts.add(new Afterthought(regrouped.get(), phrase));
      } else if (isHeardAnew(k, phrase)) {
        thoughts.add(new Afterthought(Kind.HEARD_ANEW, phrase));
      }
      if (hindsight.phrases().get(k).takenBack()) {
        thoughts.add(new Afterthought(Kind.TAKEN_BACK, phrase));
      }
      if (hindsight.phrases().get(k).answers().isPresent()) {
        thoughts.add(new Afterthought(Kind.ANSWER, phrase));
      }
    }
    return List.copyOf(thoughts);
  }

  private Optional<Kind> regrouped(int revised) {
    return revision.changes().stream()
        .filter(change -> change.firstRevised() == revised)
        .map(change -> change.isMerge() ? Kind.MERGED : Kind.SPLIT)
        .findFirst();
  }

  private boolean isHeardAnew(int revised, JudgedPhrase phrase) {
    int before = cuts.indexOf(revision.phrases().get(revised));
    return before >= 0 && live.get(before).verdict().family() != phrase.verdict().family();
  }
}
