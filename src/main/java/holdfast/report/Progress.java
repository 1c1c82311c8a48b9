package holdfast.report;

import holdfast.harmony.Fit;
import holdfast.session.Counts;
import holdfast.session.Intonation;
import holdfast.session.JudgedTake;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How this student's takes of one chart came out before today, the oldest first: facts to set side
 * by side, never a grade.
 *
 * @param earlier the takes before the one that is reported
 */
public record Progress(List<Take> earlier) {

  /** Nothing is known of earlier takes. */
  public static final Progress NONE = new Progress(List.of());

  /**
   * What one take came to.
   *
   * @param day when it was played
   * @param tempo in beats a minute
   * @param phrases phrases after the idea
   * @param restated of these, phrases that restated it
   * @param varied of these, phrases that varied it
   * @param longestRun most phrases in a row that carried it
   * @param fit how the whole take sat in its chords, 0 to 1; empty where no chord sounded
   * @param driftCents how far the tuning moved; empty for keyboards
   */
  public record Take(
      LocalDate day,
      double tempo,
      int phrases,
      int restated,
      int varied,
      int longestRun,
      OptionalDouble fit,
      OptionalDouble driftCents) {

    /** The values of a judged take. */
    public static Take of(LocalDate day, JudgedTake take) {
      Counts counts = take.counts();
      Optional<Fit> fit =
          Fit.of(take.phrases().stream().flatMap(p -> p.harmony().notes().stream()).toList());
      Optional<Intonation> tuned = Intonation.of(take);
      return new Take(
          day,
          take.setting().beats().openingTempo(),
          counts.phrases(),
          counts.restated(),
          counts.varied(),
          counts.longestRun(),
          fit.map(f -> OptionalDouble.of(f.score())).orElse(OptionalDouble.empty()),
          tuned.map(t -> OptionalDouble.of(t.driftCents())).orElse(OptionalDouble.empty()));
    }

    /** Phrases that carried the idea, by restating or varying it. */
    public int carried() {
      return restated + varied;
    }

    /** The same as a share of all; 0 where there were none. */
    public double carriedShare() {
      return phrases == 0 ? 0 : (double) carried() / phrases;
    }
  }

  /** Copies. */
  public Progress {
    earlier = List.copyOf(earlier);
  }
}
