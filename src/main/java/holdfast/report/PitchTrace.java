package holdfast.report;

import java.util.Arrays;

/**
 * How high a voice stood all along: one value in each ten milliseconds, with gaps where nothing was
 * sung. For takes of any length: it takes 4 bytes for each value.
 */
public final class PitchTrace {

  /** One value in so many seconds, as the ear hears. */
  public static final double STEP_SECONDS = 0.01;

  private final double firstSecond;
  private final float[] pitches;

  private PitchTrace(double firstSecond, float[] pitches) {
    this.firstSecond = firstSecond;
    this.pitches = pitches;
  }

  /**
   * A trace.
   *
   * @param firstSecond the second of the take at which the first value stands
   * @param pitches MIDI pitches with their fractions, one in each {@link #STEP_SECONDS}; NaN where
   *     nothing was sung
   */
  public static PitchTrace of(double firstSecond, float[] pitches) {
    return new PitchTrace(firstSecond, pitches.clone());
  }

  /** The same with its beginning at another second of the take. */
  public PitchTrace from(double second) {
    return new PitchTrace(second, pitches);
  }

  /** The MIDI pitch at a second of the take; NaN where nothing was sung. */
  public double at(double second) {
    long index = Math.round((second - firstSecond) / STEP_SECONDS);
    return index < 0 || index >= pitches.length ? Double.NaN : pitches[(int) index];
  }

  @Override
  public String toString() {
    return "from " + firstSecond + ": " + Arrays.toString(pitches);
  }
}
