package holdfast.backing;

/**
 * How long is the long eighth of a swung beat against the short one?
 *
 * <p>Friberg and Sundström (Swing ratios and ensemble timing in jazz performance, Music Perception
 * 19, 2002) measured drummers from 3.5 : 1 at slow tempi to 1 : 1 at fast ones, with a short note
 * that stays near 100 ms. The formula is derived from those three facts; they do not print it.
 */
final class Swing {

  /** Their short eighth, in milliseconds. */
  private static final double SHORT_NOTE_MILLIS = 100;

  private static final double STRAIGHT = 1;
  private static final double WIDEST = 3.5;

  private Swing() {}

  /** Long to short, 1 to 3.5, at a tempo in beats a minute. */
  static double ratio(double beatsPerMinute) {
    double beatMillis = 60_000 / beatsPerMinute;
    return Math.max(STRAIGHT, Math.min(WIDEST, beatMillis / SHORT_NOTE_MILLIS - 1));
  }

  /** Where in the beat the short eighth falls, 0.5 to 0.78. */
  static double offBeat(double beatsPerMinute) {
    double ratio = ratio(beatsPerMinute);
    return ratio / (ratio + 1);
  }
}
