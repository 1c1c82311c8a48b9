package holdfast.phrase;

/**
 * How long a silence must last before the phrase is taken to be over, when nothing is known of the
 * idea.
 *
 * <p>Three tenths of a second is the anchor: breathing takes about as long at any tempo, which is
 * why a rest counted in beats does much worse (a rest longer than one beat: F .638 on the same
 * solos). Around the anchor the patience is bent, on a logarithmic scale, by what a listener goes
 * by: slow notes ask for more of it, a note held longer than its neighbours for less (phrase-final
 * lengthening), one or two notes alone rarely are a phrase, and whoever plays detached leaves gaps
 * that mean nothing.
 */
final class Patience {

  /** A rest longer than this ends a phrase: 456 expert-marked jazz solos, F .879. */
  static final double ANCHOR_SECONDS = 0.30;

  /**
   * Whatever the evidence, silence as long as this is enough: a verdict is promised within 0.35 s
   * of the note-off, and no rounding on the way shall break that.
   */
  static final double LONGEST_SECONDS = 0.34;

  /** Shorter gaps are the lifting of a finger or the stroke of a tongue. */
  static final double SHORTEST_SECONDS = 0.18;

  /** Typical IOI of improvised lines, at which the anchor holds as it is. */
  private static final double USUAL_IOI_SECONDS = 0.17;

  /** Gaps up to this between notes of one line are plain articulation. */
  private static final double USUAL_GAP_SECONDS = 0.05;

  // Exponents; set on the tune half of the made solos, then rounded towards 0.
  private static final double PACE = 0.12;
  private static final double HELD = 0.3;
  private static final double DETACHED = 0.1;

  /** Log of the factor for a phrase of one, two, three notes so far. */
  private static final double[] FEW_NOTES = {0.25, 0.12, 0.08};

  /** A note that sounds for less is a slip of the ear; it counts as this long, in seconds. */
  private static final double SHORTEST_NOTE = 0.02;

  /** How many notes back a listener's sense of pace reaches. */
  private static final int MEMORY_NOTES = 8;

  private final double firstGuessIoi;
  private final RecentMedian iois = new RecentMedian(MEMORY_NOTES);
  private final RecentMedian gapParts = new RecentMedian(MEMORY_NOTES);

  /**
   * Begins with a guess: eighth notes at the tempo, as far as hands play them.
   *
   * @param secondsPerBeat length of a beat
   */
  Patience(double secondsPerBeat) {
    firstGuessIoi = Math.max(0.12, Math.min(0.4, secondsPerBeat / 2));
  }

  /** Learns how the notes of one phrase follow each other. */
  void noteFollowed(double ioiSeconds, double gapSeconds) {
    iois.add(ioiSeconds);
    gapParts.add(Math.max(0, gapSeconds) / Math.max(SHORTEST_NOTE, ioiSeconds - gapSeconds));
  }

  /** The IOI that has been usual lately. */
  double pace() {
    double pace = iois.or(firstGuessIoi);
    return iois.count() < 3 ? Math.sqrt(pace * firstGuessIoi) : pace;
  }

  /**
   * The silence that ends the phrase.
   *
   * @param notes in the phrase so far, at least 1
   * @param lastSounded how long the last note sounded, in seconds
   */
  double seconds(int notes, double lastSounded) {
    double log = logFactor(pace(), lastSounded);
    log += DETACHED * Math.max(0, Math.log(gapParts.or(0) * lastSounded / USUAL_GAP_SECONDS));
    if (notes <= FEW_NOTES.length) {
      log += FEW_NOTES[notes - 1];
    }
    return bounded(log);
  }

  /**
   * The rest at which an end of the phrase is as likely as not, looking back.
   *
   * @param pace usual IOI around it, in seconds
   * @param lastSounded how long the last note sounded, in seconds
   */
  static double inHindsight(double pace, double lastSounded) {
    return bounded(logFactor(pace, lastSounded));
  }

  private static double logFactor(double pace, double lastSounded) {
    return PACE * Math.log(pace / USUAL_IOI_SECONDS)
        - HELD * Math.max(0, Math.log(lastSounded / pace));
  }

  private static double bounded(double logFactor) {
    double seconds = ANCHOR_SECONDS * Math.exp(logFactor);
    return Math.max(SHORTEST_SECONDS, Math.min(LONGEST_SECONDS, seconds));
  }

  void forget() {
    iois.clear();
    gapParts.clear();
  }
}
