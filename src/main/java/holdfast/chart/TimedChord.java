package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.Optional;

/**
 * A chord as it stands in a bar, with its beats.
 *
 * @param harmony the chord; empty where the chord before the bar goes on, as slashes at a bar's
 *     start say
 * @param beats how long, in beats, more than 0
 */
public record TimedChord(Optional<Harmony> harmony, double beats) {

  /** Checks the length. */
  public TimedChord {
    if (!(beats > 0) || !Double.isFinite(beats)) {
      throw new IllegalArgumentException("a chord must last more than 0 beats, not " + beats);
    }
  }

  /** So many beats of a chord. */
  public static TimedChord of(Harmony harmony, double beats) {
    return new TimedChord(Optional.of(harmony), beats);
  }

  /** So many beats more of the chord before. */
  public static TimedChord goingOn(double beats) {
    return new TimedChord(Optional.empty(), beats);
  }
}
