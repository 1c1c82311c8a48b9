package holdfast.listening.pitch;

import java.util.Arrays;

/**
 * How likely is it that a frame is sung?
 *
 * <p>A logistic rule over what an ear uses: how clear the period is; how much sounds between its
 * harmonics (little in a voice, much in a chord); how bright the frame; how far it lies under the
 * singer's usual level, under the loudest of the last 400 ms, and above what sounds in the rests;
 * and how fast it dies away. The weights were fitted by maximum likelihood on the bench's
 * development clips (its own singers and sampled instruments, clean, in noise, in a room, over a
 * backing; half of the clips held out gave the same errors) and are rounded.
 */
final class Voicing {

  private static final double BIAS = 4.0;
  private static final double PER_CLARITY = 1.7;
  private static final double PER_BETWEEN = -8.0;
  private static final double PER_BRIGHTNESS = -0.9;
  private static final double PER_DB_UNDER_VOICE = 0.28;
  private static final double PER_DB_UNDER_PEAK = 0.062;
  private static final double PER_DB_OF_FALL = -0.085;
  private static final double PER_DB_OVER_BACKGROUND = 0.205;

  /** Ends of the ranges in which decibels count. */
  private static final double FARTHEST_UNDER_VOICE = -30;

  private static final double FARTHEST_UNDER_PEAK = -25;
  private static final double FASTEST_FALL = -8;
  private static final double ENOUGH_OVER_BACKGROUND = 12;

  /** Frames that a peak is remembered: 400 ms. */
  private static final int PEAK_FRAMES = 80;

  /** Frames over which a fall is measured: 40 ms. */
  private static final int FALL_FRAMES = 8;

  /** The singer's level falls this fast when nothing louder comes: decibels a frame, 1 a second. */
  private static final double VOICE_FALL_DB = Frames.HOP_SECONDS;

  /** How fast it rises towards a louder clear frame. */
  private static final double VOICE_RISE_SHARE = 0.05;

  /** Only frames as clear as this say how loud the singer is. */
  private static final double CLEAR = 0.8;

  /** The background follows the softest tenth: it falls nine times as fast as it rises. */
  private static final double BACKGROUND_RISE_DB = 0.1 * 0.04;

  private static final double BACKGROUND_FALL_DB = 0.9 * 0.04;

  private final float[] recent = new float[PEAK_FRAMES];
  private int newest;
  private double voiceDb;
  private double backgroundDb;

  Voicing(Levels levels) {
    this.voiceDb = levels.voiceDb();
    this.backgroundDb = levels.backgroundDb();
    Arrays.fill(recent, -120);
  }

  double probability(FrameAnalysis frame) {
    double level = frame.levelDb();
    if (frame.best() > CLEAR && frame.aboveNoiseDb() > 6 && level > voiceDb) {
      voiceDb += VOICE_RISE_SHARE * (level - voiceDb);
    } else {
      voiceDb -= VOICE_FALL_DB;
    }
    backgroundDb += level < backgroundDb ? -BACKGROUND_FALL_DB : BACKGROUND_RISE_DB;
    newest = (newest + 1) % PEAK_FRAMES;
    recent[newest] = (float) level;
    double peak = level;
    for (float value : recent) {
      peak = Math.max(peak, value);
    }
    double fall = level - recent[Math.floorMod(newest - FALL_FRAMES, PEAK_FRAMES)];
    double background = Math.min(backgroundDb, voiceDb - Levels.LEAST_DISTANCE_DB);
    double x =
        BIAS
            + PER_CLARITY * frame.best()
            + PER_BETWEEN * frame.between()
            + PER_BRIGHTNESS * frame.brightness()
            + PER_DB_UNDER_VOICE * clamp(level - voiceDb, FARTHEST_UNDER_VOICE, 0)
            + PER_DB_UNDER_PEAK * clamp(level - peak, FARTHEST_UNDER_PEAK, 0)
            + PER_DB_OF_FALL * clamp(fall, FASTEST_FALL, 0)
            + PER_DB_OVER_BACKGROUND * clamp(level - background, 0, ENOUGH_OVER_BACKGROUND);
    return 1 / (1 + Math.exp(-x));
  }

  double backgroundDb() {
    return Math.min(backgroundDb, voiceDb - Levels.LEAST_DISTANCE_DB);
  }

  /** Where the singer stands now, in decibels. */
  double voiceDb() {
    return voiceDb;
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }
}
