package holdfast.motif;

import java.util.Arrays;

/**
 * Lays an idea along a phrase in which every extra note is a short ornament: a neighbour, a passing
 * note, a grace note. The ornament takes its time from the note before it, or from the note that it
 * leads to, which then sounds late (both are common practice); the alignment finds out which.
 */
final class OrnamentAligner {

  /** At most so many ornaments stand before one note. */
  private static final int MOST = 3;

  /** Before the first note a single grace note; more would be an upbeat of its own. */
  private static final int MOST_IN_FRONT = 1;

  /**
   * An ornament lasts at most this share of the idea's pulse: a quarter beat where the pulse is an
   * eighth note, with some room for human timing.
   */
  private static final double SHORT = 0.6;

  /** In an idea with a few very short notes, this share of the mean step may be longer. */
  private static final double SHORT_OF_MEAN = 0.45;

  /** How soft that limit is, in pulses. */
  private static final double SOFT = 0.08;

  /** Each further ornament in a phrase is this likely. */
  private static final double ONE_MORE = 0.5;

  private static final double LN_HALF = Math.log(0.5);

  private static final double NEVER = Double.NEGATIVE_INFINITY;

  private final Line idea;
  private final Line phrase;
  private final Background background;
  private final RhythmModel rhythm;
  private final int n;
  private final int m;
  private final double shortest;
  private final double[] ornament;
  private final double drop;
  private final double[] best;
  private final int[] from;
  private int endState = -1;

  OrnamentAligner(Line idea, Line phrase, Background background, RhythmModel rhythm, double slip) {
    this.idea = idea;
    this.phrase = phrase;
    this.background = background;
    this.rhythm = rhythm;
    this.n = idea.size;
    this.m = phrase.size;
    this.shortest = Math.max(SHORT, SHORT_OF_MEAN * idea.span() / Math.max(1, n - 1));
    this.drop = slip;
    this.ornament = new double[m + 1];
    for (int j = 0; j < m; j++) {
      ornament[j + 1] = ornament[j] + ornament(j);
    }
    this.best = new double[n * m * (MOST + 1)];
    this.from = new int[best.length];
  }

  /** ln density of note j as an ornament: its pitch, and the time to the next note. */
  private double ornament(int j) {
    if (j + 1 >= m) {
      return NEVER;
    }
    double step = phrase.onset[j + 1] - phrase.onset[j];
    double late = Math.max(0, step - shortest) / SOFT;
    int toNext = phrase.pitch[j] - phrase.pitch[j + 1];
    double near =
        j == 0 ? near(toNext) : (near(toNext) + near(phrase.pitch[j] - phrase.pitch[j - 1])) / 2;
    double pitch = 0.9 * near + 0.1 * Math.exp(background.pitch[j]);
    return Math.log(ONE_MORE) + Math.log(pitch) - Math.log(shortest) - 0.5 * late * late;
  }

  /** An ornament lies a step from a note that it adorns, seldom a third. */
  private static double near(int semitones) {
    int size = Math.abs(semitones);
    return size == 1 || size == 2 ? 0.22 : size == 3 || size == 4 ? 0.03 : 0;
  }

  /**
   * The best alignment's ln likelihood.
   *
   * @param notes as for {@link Aligner#align}
   * @param scale how much longer the idea's times are
   */
  double align(double[] notes, double scale) {
    Arrays.fill(best, NEVER);
    double score = NEVER;
    endState = -1;
    for (int j = 0; j <= Math.min(MOST_IN_FRONT, m - 1); j++) {
      for (int a = 0; a <= j; a += Math.max(1, j)) {
        double value = ornament[j] + half(j) + notes[j];
        int state = state(0, j, a);
        best[state] = value;
        from[state] = -1;
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < m; j++) {
        for (int a = 0; a <= MOST && a <= j; a++) {
          int here = state(i, j, a);
          double value = best[here];
          if (value == NEVER) {
            continue;
          }
          if (j == m - 1 && value + (n - 1 - i) * drop > score && i >= n - 2) {
            score = value + (n - 1 - i) * drop;
            endState = here;
          }
          for (int d = 0; d <= 1 && i + d + 1 < n; d++) {
            go(notes, scale, i, j, a, i + d + 1, value + d * drop, here);
          }
        }
      }
    }
    return score;
  }

  private void go(
      double[] notes, double scale, int i, int j, int a, int toIdea, double value, int here) {
    RhythmModel.Meaning meant = rhythm.meaning(scale * (idea.onset[toIdea] - idea.onset[i]));
    for (int c = 0; c <= MOST && j + c + 1 < m; c++) {
      int to = j + c + 1;
      double put = ornament[to] - ornament[j + 1] + half(c) + notes[toIdea * m + to] + value;
      if (put == NEVER) {
        continue;
      }
      for (int late = 0; late <= c; late += Math.max(1, c)) {
        double step = phrase.onset[to - late] - phrase.onset[j - a];
        double next = put + meant.log(step);
        int state = state(toIdea, to, late);
        if (next > best[state]) {
          best[state] = next;
          from[state] = here;
        }
      }
    }
  }

  /** Before or on the beat: even odds, where there is an ornament at all. */
  private static double half(int ornaments) {
    return ornaments == 0 ? 0 : LN_HALF;
  }

  private int state(int i, int j, int a) {
    return (i * m + j) * (MOST + 1) + a;
  }

  /** As {@link Aligner#path}. */
  int[] path() {
    int[] ideaOf = new int[m];
    Arrays.fill(ideaOf, -1);
    for (int state = endState; state >= 0; state = from[state]) {
      int pair = state / (MOST + 1);
      ideaOf[pair % m] = pair / m;
    }
    return ideaOf;
  }
}
