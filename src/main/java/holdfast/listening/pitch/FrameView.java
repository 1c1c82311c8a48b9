package holdfast.listening.pitch;

/**
 * What was seen in one frame: its candidates in order of falling pitch, and the frame as a whole.
 * Frames are kept in rings and filled again and again, so that nothing is allocated on the way.
 */
final class FrameView {

  /** Decibels of a frame in which nothing repeats. */
  static final float NOTHING_DB = -120;

  /** What two frames 10 ms apart may differ by and yet sound alike. */
  private static final double SAME_CENTS = 40;

  private static final double SAME_DB = 3;
  private static final double SAME_CLARITY = 0.2;

  /** Whether it lies between two frames in which nothing is sung, and was not looked at itself. */
  boolean inRest;

  int count;
  final float[] cents = new float[FrameAnalysis.MOST];

  /** Logarithm of the probability of each candidate among the candidates. */
  final float[] logMass = new float[FrameAnalysis.MOST];

  /** Clarity of each, 0 to 1. */
  final float[] clarity = new float[FrameAnalysis.MOST];

  /** Level in decibels of each one's harmonics alone, without what sounds between them. */
  final float[] harmonicDb = new float[FrameAnalysis.MOST];

  /** The likeliest candidate. */
  int favourite;

  /** Amplitude between the favourite's harmonics against that on them, 0 to 1. */
  float between;

  /** Level of the whole frame, decibels under full scale. */
  float levelDb;

  /** Level over the room's steady noise, in decibels. */
  float aboveNoiseDb;

  /** Share of the power above 3 kHz: high in an s or a breath. */
  float brightness;

  /** Share of the spectrum that is new against 15 ms before, 0 to 1. */
  float flux;

  float favouriteCents() {
    return count == 0 ? 0 : cents[favourite];
  }

  float favouriteClarity() {
    return count == 0 ? 0 : clarity[favourite];
  }

  float favouriteDb() {
    return count == 0 ? NOTHING_DB : Math.max(NOTHING_DB, harmonicDb[favourite]);
  }

  /**
   * Whether both sound alike, so that what lies between them does too.
   *
   * @param share of the usual differences that is allowed, 0 to 1
   */
  boolean isLike(FrameView other, double share) {
    return isOfPitch(other, share)
        && Math.abs(levelDb - other.levelDb) < SAME_DB * share
        && Math.abs(favouriteDb() - other.favouriteDb()) < SAME_DB * share
        && Math.abs(favouriteClarity() - other.favouriteClarity()) < SAME_CLARITY * share;
  }

  /** Whether both are likeliest of the same pitch, as far as that share of a difference. */
  boolean isOfPitch(FrameView other, double share) {
    return count > 0
        && other.count > 0
        && Math.abs(favouriteCents() - other.favouriteCents()) < SAME_CENTS * share;
  }

  /** Becomes what lies between two frames that are alike, a share of the way from one. */
  void between(FrameView before, FrameView after, float way) {
    count = before.count;
    favourite = before.favourite;
    for (int i = 0; i < count; i++) {
      int same = after.nearest(before.cents[i]);
      boolean both = after.count > 0 && Math.abs(after.cents[same] - before.cents[i]) < SAME_CENTS;
      float on = both ? way : 0;
      cents[i] = mix(before.cents[i], after.cents[same], on);
      logMass[i] = mix(before.logMass[i], after.logMass[same], on);
      clarity[i] = mix(before.clarity[i], after.clarity[same], on);
      harmonicDb[i] = mix(before.harmonicDb[i], after.harmonicDb[same], on);
    }
    inRest = false;
    asAWhole(before, after, way);
  }

  /** Becomes what lies between two frames of a rest: of no other pitch than the likeliest. */
  void restBetween(FrameView before, FrameView after, float way) {
    count = Math.min(1, before.count);
    favourite = 0;
    cents[0] = before.favouriteCents();
    logMass[0] = 0;
    clarity[0] = mix(before.favouriteClarity(), after.favouriteClarity(), way);
    harmonicDb[0] = mix(before.favouriteDb(), after.favouriteDb(), way);
    inRest = true;
    asAWhole(before, after, way);
  }

  private void asAWhole(FrameView before, FrameView after, float way) {
    between = mix(before.between, after.between, way);
    levelDb = mix(before.levelDb, after.levelDb, way);
    aboveNoiseDb = mix(before.aboveNoiseDb, after.aboveNoiseDb, way);
    brightness = mix(before.brightness, after.brightness, way);
  }

  private int nearest(float pitch) {
    int best = 0;
    for (int i = 1; i < count; i++) {
      if (Math.abs(cents[i] - pitch) < Math.abs(cents[best] - pitch)) {
        best = i;
      }
    }
    return best;
  }

  private static float mix(float a, float b, float way) {
    return a + way * (b - a);
  }
}
