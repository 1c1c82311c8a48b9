package holdfast.listening.alignment;

import java.util.function.DoubleFunction;

/**
 * A backing as it can be rendered.
 *
 * @param rendered the sound at so many times its tempo, 1 for as it is written; asked for the same
 *     it may give the same, and whoever made this closes it
 * @param barOneSeconds where beat 1 of bar 1 lies in the sound as it is written
 * @param beatSeconds how long a beat is
 * @param chorusSeconds how long one chorus is
 */
public record KnownBacking(
    DoubleFunction<RenderedBacking> rendered,
    double barOneSeconds,
    double beatSeconds,
    double chorusSeconds) {

  /** Checks the times. */
  public KnownBacking {
    if (!(beatSeconds > 0) || !(chorusSeconds > 0) || !(barOneSeconds >= 0)) {
      throw new IllegalArgumentException("times of a backing are more than 0");
    }
  }

  /** The same backing played at another tempo. */
  KnownBacking atTempo(double ratio) {
    return new KnownBacking(
        times -> rendered.apply(times * ratio),
        barOneSeconds / ratio,
        beatSeconds / ratio,
        chorusSeconds / ratio);
  }
}
