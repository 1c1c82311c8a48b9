package holdfast.session;

import holdfast.harmony.Fit;
import holdfast.harmony.HeardNote;
import holdfast.motif.Family;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a take comes to: counts with evidence, and no grade. The idea's own first statement is not
 * counted; it is what the others are held against.
 *
 * @param phrases phrases after the idea
 * @param restated of these, phrases that restate it
 * @param varied of these, phrases that vary it
 * @param longestRun most phrases in a row that carried it, by restating or varying
 * @param lost phrases at which it was let go: new material right after the idea was heard
 * @param choruses each chorus for itself
 */
public record Counts(
    int phrases,
    int restated,
    int varied,
    int longestRun,
    List<JudgedPhrase> lost,
    List<Chorus> choruses) {

  /**
   * One chorus.
   *
   * @param number counted from 1
   * @param phrases phrases after the idea that stand in it
   * @param carried of these, phrases that carried the idea
   * @param fit how all its notes sit in their chords; empty where no chord sounded
   */
  public record Chorus(int number, int phrases, int carried, Optional<Fit> fit) {}

  /** Copies. */
  public Counts {
    lost = List.copyOf(lost);
    choruses = List.copyOf(choruses);
  }

  /** Counts the phrases of a take. */
  public static Counts of(List<JudgedPhrase> all) {
    List<JudgedPhrase> after = all.stream().filter(p -> !p.statesTheIdea()).toList();
    int restated = 0;
    int varied = 0;
    int run = 0;
    int longest = 0;
    boolean carrying = true;
    List<JudgedPhrase> lost = new ArrayList<>();
    for (JudgedPhrase phrase : after) {
      restated += phrase.verdict().family() == Family.RESTATED ? 1 : 0;
      varied += phrase.verdict().family() == Family.VARIED ? 1 : 0;
      run = phrase.carries() ? run + 1 : 0;
      longest = Math.max(longest, run);
      if (!phrase.carries() && carrying) {
        lost.add(phrase);
      }
      carrying = phrase.carries();
    }
    return new Counts(after.size(), restated, varied, longest, lost, choruses(all));
  }

  /** Phrases that carried the idea, by restating or varying it. */
  public int carried() {
    return restated + varied;
  }

  /** Phrases of new material. */
  public int fresh() {
    return phrases - carried();
  }

  private static List<Chorus> choruses(List<JudgedPhrase> all) {
    Map<Integer, List<JudgedPhrase>> byChorus = new TreeMap<>();
    for (JudgedPhrase phrase : all) {
      byChorus.computeIfAbsent(phrase.place().chorus(), c -> new ArrayList<>()).add(phrase);
    }
    List<Chorus> choruses = new ArrayList<>();
    byChorus.forEach(
        (number, phrases) -> {
          List<HeardNote> notes =
              phrases.stream().flatMap(p -> p.harmony().notes().stream()).toList();
          List<JudgedPhrase> counted = phrases.stream().filter(p -> !p.statesTheIdea()).toList();
          int carried = (int) counted.stream().filter(JudgedPhrase::carries).count();
          choruses.add(new Chorus(number, counted.size(), carried, Fit.of(notes)));
        });
    return choruses;
  }
}
