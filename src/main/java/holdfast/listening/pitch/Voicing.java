package holdfast.listening.pitch;

import java.util.Arrays;

/**
 * How likely is it that the player sounds in a frame?
 *
 * <p>A logistic rule over what a listener uses: how far the pitch's own harmonics lie under the
 * player's usual level and over what sounds in the rests; how far it lies outside the player's
 * register; how much sounds between its harmonics (little in a voice, much in a chord); how bright
 * the frame is; and how far it has fallen from the loudest of the last 400 ms. The weights were
 * fitted by maximum likelihood on the bench's development clips (formant singers and two sets of
 * sampled instruments; clean, in noise, in a room, over a backing) and are rounded.
 *
 * <p>As long as the player is a stranger, who does not sound alone is hardly heard: a backing
 * begins with a chord, a player with a note. And what lies under the player's register is sooner
 * taken for the backing than what lies over it, since an accompaniment mostly lies under its tune.
 */
final class Voicing {

  private static final double BIAS = 5.4;
  private static final double PER_BETWEEN = -3.5;

  /** On top of that before anyone is known. */
  private static final double PER_BETWEEN_OF_STRANGER = -18;

  private static final double PER_BRIGHTNESS = -1.2;
  private static final double PER_DB_UNDER_PEAK = 0.1;
  private static final double PER_DB_UNDER_PLAYER = 0.125;
  private static final double PER_DB_FAR_UNDER_PLAYER = 0.085;
  private static final double PER_DB_OVER_REST = 0.06;

  /**
   * Two halves of normal distributions round the middle of the register, 0.69 octaves wide under it
   * and 1.8 over it. Half of the lower one is what any register is; the rest is learned.
   */
  private static final double PER_SQUARED_OCTAVE_UNDER = -1.05;

  private static final double PER_SQUARED_OCTAVE_OVER = -0.15;

  /** Ends of the ranges in which decibels and octaves count. */
  private static final double FARTHEST_UNDER_PLAYER = -45;

  private static final double LOUD_NOTES_DB = 6;
  private static final double FARTHEST_UNDER_LOUD = -15;
  private static final double FARTHEST_UNDER_PEAK = -25;
  private static final double ENOUGH_OVER_REST = 30;
  private static final double FARTHEST_OCTAVES = 2;

  /** Frames that a peak is remembered: 400 ms. */
  private static final int PEAK_FRAMES = 80;

  private final float[] recent = new float[PEAK_FRAMES];
  private int newest;

  Voicing() {
    Arrays.fill(recent, FrameView.NOTHING_DB);
  }

  double probability(FrameView frame, Portrait player) {
    newest = (newest + 1) % PEAK_FRAMES;
    recent[newest] = frame.levelDb;
    float peak = frame.levelDb;
    for (float value : recent) {
      peak = Math.max(peak, value);
    }
    double againstStranger = PER_BETWEEN_OF_STRANGER * (1 - player.acquaintance()) * frame.between;
    return logistic(
        likeliest(frame, player)
            + againstStranger
            + PER_DB_UNDER_PEAK * clamp(frame.levelDb - peak, FARTHEST_UNDER_PEAK, 0)
            + outOfRegister(frame, player));
  }

  /** The most that it may be for a player of whom only this is known, whatever sounded before. */
  static double mostProbable(FrameView frame, Portrait player) {
    return logistic(
        likeliest(frame, player) + player.registerKnown() * outOfRegister(frame, player));
  }

  private static double outOfRegister(FrameView frame, Portrait player) {
    double octaves =
        clamp(
            (frame.favouriteCents() - player.usualCents()) / 1200,
            -FARTHEST_OCTAVES,
            FARTHEST_OCTAVES);
    double perSquaredOctave =
        octaves < 0
            ? PER_SQUARED_OCTAVE_UNDER * 0.5 * (1 + player.registerKnown())
            : PER_SQUARED_OCTAVE_OVER;
    return perSquaredOctave * octaves * octaves;
  }

  private static double likeliest(FrameView frame, Portrait player) {
    double under = frame.favouriteDb() - player.playerDb();
    double over = frame.favouriteDb() - player.restDb();
    return BIAS
        + PER_BETWEEN * frame.between
        + PER_BRIGHTNESS * frame.brightness
        + PER_DB_UNDER_PLAYER * clamp(under, FARTHEST_UNDER_PLAYER, 0)
        + PER_DB_FAR_UNDER_PLAYER * clamp(under + LOUD_NOTES_DB, FARTHEST_UNDER_LOUD, 0)
        + PER_DB_OVER_REST * clamp(over, 0, ENOUGH_OVER_REST);
  }

  private static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }
}
