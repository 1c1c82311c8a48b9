package holdfast.motif;

/**
 * Ups and downs kept, sizes free: an interval goes the idea's way, its size about the idea's as
 * often as not, else any that melodies take.
 */
final class Contour {

  /** How often a kept contour's interval really goes the idea's way. */
  private static final double SAME_WAY = 0.97;

  /** Share of intervals that lie about the idea's size rather than anywhere. */
  private static final double ABOUT_SIZE = 0.5;

  /** How near "about" is: an e-fold in so many semitones. */
  private static final double SIZE_REACH = 2.3;

  /** Share of first notes that stay about the idea's own, and how near. */
  private static final double ABOUT_PLACE = 0.6;

  private static final double PLACE_REACH = 2.5;

  private static final int WIDEST = 24;

  private static final double[][] SIZES = sizes();

  private Contour() {}

  /** ln probability of beginning with each phrase note for each idea note. */
  static double[] starts(Line idea, Line phrase, Background background) {
    int m = phrase.size;
    double[] starts = new double[idea.size * m];
    double q = Math.exp(-1 / PLACE_REACH);
    double normal = (1 - q) / (1 + q);
    for (int i = 0; i < idea.size; i++) {
      for (int j = 0; j < m; j++) {
        int off = Math.abs(phrase.pitch[j] - idea.pitch[i]);
        double near = normal * Math.exp(-off / PLACE_REACH);
        starts[i * m + j] =
            Math.log(ABOUT_PLACE * near + (1 - ABOUT_PLACE) * Math.exp(background.pitch[j]));
      }
    }
    return starts;
  }

  /** ln probability of each step's move in pitch, in the aligner's table. */
  static double[] moves(Line idea, Line phrase, Background background, Aligner aligner) {
    double[] table = new double[aligner.steps()];
    for (int i = 0; i < idea.size; i++) {
      for (int d = 0; d < Aligner.DROPS && i + d + 1 < idea.size; d++) {
        int meant = idea.pitch[i + d + 1] - idea.pitch[i];
        for (int j = 0; j < phrase.size; j++) {
          for (int a = 0; a < Aligner.ADDS && j + a + 1 < phrase.size; a++) {
            int step = phrase.pitch[j + a + 1] - phrase.pitch[j];
            table[aligner.cell(i, j, d, a)] =
                Math.log(share(step, meant)) + background.taste[j + a + 1];
          }
        }
      }
    }
    return table;
  }

  /** Probability of an interval where the idea has {@code meant}. */
  private static double share(int step, int meant) {
    double any = Background.stepShare(step);
    if (Integer.signum(step) != Integer.signum(meant)) {
      return (1 - SAME_WAY) * any;
    }
    if (meant == 0) {
      return SAME_WAY;
    }
    double about = SIZES[Math.min(WIDEST, Math.abs(meant))][Math.min(WIDEST, Math.abs(step))];
    double free = any / Background.directionShare(step);
    return SAME_WAY * (ABOUT_SIZE * about + (1 - ABOUT_SIZE) * free);
  }

  private static double[][] sizes() {
    double[][] shares = new double[WIDEST + 1][WIDEST + 1];
    for (int meant = 1; meant <= WIDEST; meant++) {
      double sum = 0;
      for (int size = 1; size <= WIDEST; size++) {
        shares[meant][size] = Math.exp(-Math.abs(size - meant) / SIZE_REACH);
        sum += shares[meant][size];
      }
      for (int size = 1; size <= WIDEST; size++) {
        shares[meant][size] /= sum;
      }
    }
    return shares;
  }

  /** Whether all that is aligned goes up, down and along as the idea does. */
  static boolean kept(Line idea, Line phrase, int[] ideaOf) {
    return everywhere(idea, phrase, ideaOf, (was, is) -> was == is);
  }

  /** Whether no up of what is aligned became a down, nor a down an up. */
  static boolean neverTurned(Line idea, Line phrase, int[] ideaOf) {
    return everywhere(idea, phrase, ideaOf, (was, is) -> was * is >= 0);
  }

  /** A direction in the idea against the one that was played: 1 up, −1 down, 0 along. */
  private interface Agreement {
    boolean holds(int was, int is);
  }

  /** Whether the directions agree from each aligned note to the next. */
  private static boolean everywhere(Line idea, Line phrase, int[] ideaOf, Agreement agreement) {
    int before = -1;
    for (int j = 0; j < phrase.size; j++) {
      int i = ideaOf[j];
      if (i < 0) {
        continue;
      }
      if (before >= 0) {
        int was = Integer.signum(idea.pitch[i] - idea.pitch[ideaOf[before]]);
        int is = Integer.signum(phrase.pitch[j] - phrase.pitch[before]);
        if (!agreement.holds(was, is)) {
          return false;
        }
      }
      before = j;
    }
    return true;
  }

  /** Whether the intervals only grew or only shrank: a word for it, or nothing. */
  static String sizes(Line idea, Line phrase, int[] ideaOf) {
    boolean wider = false;
    boolean narrower = false;
    int before = -1;
    for (int j = 0; j < phrase.size; j++) {
      int i = ideaOf[j];
      if (i < 0) {
        continue;
      }
      if (before >= 0) {
        int was = Math.abs(idea.pitch[i] - idea.pitch[ideaOf[before]]);
        int is = Math.abs(phrase.pitch[j] - phrase.pitch[before]);
        wider |= is > was;
        narrower |= is < was;
      }
      before = j;
    }
    return wider == narrower ? "" : wider ? "intervals widened" : "intervals narrowed";
  }
}
