package holdfast.listening.pitch;

/**
 * The likeliest path of pitch and voicing through the candidates of all frames: the Viterbi
 * algorithm over candidates, each sung or not sung, as in probabilistic YIN (Mauch and Dixon 2014),
 * but over the candidates themselves rather than over bins, so that cents stay exact. It decides
 * each frame a fixed number of frames later.
 */
final class PitchPath {

  private static final int MOST = FrameAnalysis.MOST;

  /** Cost of a change between sung and not sung, in nats (a negative log probability). */
  private static final double SWITCH = 3.0;

  /** Cents of movement in one frame that cost one nat: 40 in 5 ms is 80 semitones a second. */
  private static final double CENTS_PER_NAT = 40;

  /** A leap costs this much at most: players leap, trackers slip; a slip must pay twice. */
  private static final double LEAP = 7.0;

  /** The same between frames that are not sung, where nothing holds the pitch. */
  private static final double UNSUNG_LEAP = 3.0;

  private final int lag;
  private final byte[][] from;
  private final float[][] cents;
  private final float[][] harmonicDb;
  private final float[] sungProbability;
  private final double[] sung = new double[MOST];
  private final double[] unsung = new double[MOST];
  private final double[] nextSung = new double[MOST];
  private final double[] nextUnsung = new double[MOST];
  private int states;
  private long frames;

  private double decidedCents;
  private boolean decidedSung;
  private double decidedDb;
  private double decidedProbability;
  private long decidedFrame = -1;

  /** A path that decides {@code lag} frames after each frame, 0 or more. */
  PitchPath(int lag) {
    this.lag = lag;
    this.from = new byte[lag + 2][2 * MOST];
    this.cents = new float[lag + 2][MOST];
    this.harmonicDb = new float[lag + 2][MOST];
    this.sungProbability = new float[lag + 2];
  }

  /**
   * Takes the next frame.
   *
   * @return whether a frame has been decided (readable until the next call)
   */
  boolean push(FrameView frame, double probability) {
    int n = frame.count;
    int slot = (int) (frames % (lag + 2));
    float[] pitch = cents[slot];
    float[] loud = harmonicDb[slot];
    byte[] back = from[slot];
    int count = Math.max(1, n);
    if (n == 0) {
      // Nothing repeats: keep the last pitch as a guess.
      pitch[0] = states > 0 ? cents[previousSlot(slot)][bestState() % MOST] : 6900;
      loud[0] = FrameView.NOTHING_DB;
    }
    double logSung = Math.log(Math.max(1e-6, n == 0 ? 1e-6 : probability));
    double logUnsung = Math.log(Math.max(1e-6, 1 - probability));
    float[] previous = cents[previousSlot(slot)];
    for (int j = 0; j < count; j++) {
      double logMass = 0;
      if (n > 0) {
        pitch[j] = frame.cents[j];
        loud[j] = frame.harmonicDb[j];
        logMass = frame.logMass[j];
      }
      double bestSung = frames == 0 ? 0 : Double.MAX_VALUE;
      double bestUnsung = bestSung;
      int backSung = 0;
      int backUnsung = MOST;
      for (int i = 0; i < states; i++) {
        double move = Math.abs(pitch[j] - previous[i]) / CENTS_PER_NAT;
        double leap = Math.min(move, LEAP);
        double drift = Math.min(move, UNSUNG_LEAP);
        double stay = sung[i] + leap;
        double enter = unsung[i] + drift + SWITCH;
        double leave = sung[i] + drift + SWITCH;
        double rest = unsung[i] + drift;
        if (stay < bestSung) {
          bestSung = stay;
          backSung = i;
        }
        if (enter < bestSung) {
          bestSung = enter;
          backSung = i + MOST;
        }
        if (rest < bestUnsung) {
          bestUnsung = rest;
          backUnsung = i + MOST;
        }
        if (leave < bestUnsung) {
          bestUnsung = leave;
          backUnsung = i;
        }
      }
      nextSung[j] = bestSung - logSung - logMass;
      nextUnsung[j] = bestUnsung - logUnsung - logMass;
      back[j] = (byte) backSung;
      back[j + MOST] = (byte) backUnsung;
    }
    double least = Double.MAX_VALUE;
    for (int j = 0; j < count; j++) {
      least = Math.min(least, Math.min(nextSung[j], nextUnsung[j]));
    }
    for (int j = 0; j < count; j++) {
      sung[j] = nextSung[j] - least;
      unsung[j] = nextUnsung[j] - least;
    }
    states = count;
    sungProbability[slot] = (float) probability;
    frames++;
    if (frames <= lag) {
      return false;
    }
    decide(frames - 1 - lag);
    return true;
  }

  /**
   * Decides one of the last frames that have not been decided; for the end of a take.
   *
   * @return whether there was one
   */
  boolean flush() {
    if (decidedFrame >= frames - 1) {
      return false;
    }
    decide(decidedFrame + 1);
    return true;
  }

  private void decide(long target) {
    int state = bestState();
    for (long frame = frames - 1; frame > target; frame--) {
      state = from[(int) (frame % (lag + 2))][state];
    }
    int slot = (int) (target % (lag + 2));
    decidedSung = state < MOST;
    decidedCents = cents[slot][state % MOST];
    decidedDb = harmonicDb[slot][state % MOST];
    decidedProbability = sungProbability[slot];
    decidedFrame = target;
  }

  private int previousSlot(int slot) {
    return slot == 0 ? lag + 1 : slot - 1;
  }

  private int bestState() {
    int best = 0;
    double least = Double.MAX_VALUE;
    for (int j = 0; j < states; j++) {
      if (sung[j] < least) {
        least = sung[j];
        best = j;
      }
      if (unsung[j] < least) {
        least = unsung[j];
        best = j + MOST;
      }
    }
    return best;
  }

  /** Number of the decided frame, from 0. */
  long frame() {
    return decidedFrame;
  }

  /** Whether the decided frame is sung. */
  boolean isSung() {
    return decidedSung;
  }

  /** Pitch of the decided frame in cents; a guess where it is not sung. */
  double cents() {
    return decidedCents;
  }

  /** Level in decibels of the decided pitch's harmonics alone. */
  double harmonicDb() {
    return decidedDb;
  }

  /** Probability with which the decided frame by itself is sung. */
  double probability() {
    return decidedProbability;
  }
}
