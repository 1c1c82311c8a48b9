package holdfast.book;

import holdfast.report.Progress;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A take as the book's table tells it: a line of what stands in its folder.
 *
 * @param take the name of its folder
 * @param started when it was played
 * @param student who played
 * @param chart the chart's title
 * @param tempo in beats a minute, at its beginning
 * @param way the way of practising by its word
 * @param idea the idea, as notes; empty where nothing was played
 * @param phrases phrases after the idea
 * @param carried of these, phrases that restated or varied it
 * @param longestRun most carried phrases in a row
 * @param restated of the phrases after the idea, those that restated it
 * @param fit how all notes sat in their chords, 0 to 1; empty where no chord sounded
 * @param driftCents how far the tuning moved; empty for keyboards
 * @param families the family of each phrase after the idea in order, a letter each: r restated, v
 *     varied, n new
 * @param lostBars bars at which the idea was let go, in order
 * @param feeling how it felt to the student
 * @param overruled how many verdicts the teacher overruled
 * @param notes what the teacher wrote; may be empty
 * @param fluency what came of it where ideas were invented and none was to be carried
 */
public record Entry(
    String take,
    LocalDateTime started,
    Optional<String> student,
    String chart,
    double tempo,
    Optional<String> way,
    String idea,
    int phrases,
    int carried,
    int longestRun,
    int restated,
    OptionalDouble fit,
    OptionalDouble driftCents,
    String families,
    List<Integer> lostBars,
    Optional<SelfEstimate.Feeling> feeling,
    int overruled,
    String notes,
    Optional<Fluency> fluency) {

  /**
   * How ideas came in a session of inventing.
   *
   * @param different really different ideas
   * @param said all that were played
   * @param minutes how long it lasted
   */
  public record Fluency(int different, int said, double minutes) {

    /** Different ideas a minute; 0 where nothing was played. */
    public double perMinute() {
      return minutes > 0 ? different / minutes : 0;
    }
  }

  /** Copies. */
  public Entry {
    lostBars = List.copyOf(lostBars);
  }

  /** The same as a line of progress. */
  public Progress.Take progress() {
    return new Progress.Take(
        started.toLocalDate(),
        tempo,
        phrases,
        restated,
        carried - restated,
        longestRun,
        fit,
        driftCents);
  }

  /** The part of the phrases that carried the idea, 0 to 1; empty where there was none after it. */
  public OptionalDouble share() {
    return phrases == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.min(1, (double) carried / phrases));
  }
}
