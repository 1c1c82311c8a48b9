package holdfast.motif;

import java.util.Arrays;

/**
 * Lays an idea along a phrase, note by note, so that notes may be left out and put in, and tells
 * how likely the phrase is then. Dynamic programming (Viterbi) over pairs of idea note and phrase
 * note.
 *
 * <p>Between one pair and the next at most {@link #DROPS} − 1 idea notes are passed over and at
 * most {@link #ADDS} − 1 phrase notes stand unexplained; such notes come from the background.
 */
final class Aligner {

  /** Ways to go on along the idea: to the next note, or past one or two. */
  static final int DROPS = 3;

  /** Ways to go on along the phrase: to the next note, or past one to three. */
  static final int ADDS = 4;

  /** How many ways there are to go on along the phrase after leaving out 0, 1, 2 idea notes. */
  private static final int[] STEPS_AFTER = {ADDS, 2, 1};

  private static final double NEVER = Double.NEGATIVE_INFINITY;

  private final int n;
  private final int m;
  private final Line phrase;
  private final Background background;
  private final double[] pitchSum;
  private final double[] timeSum;
  private final double[] best;
  private final double[] ahead;
  private final int[] from;
  private double score;
  private int endCell;

  Aligner(int ideaSize, Line phrase, Background background) {
    this.n = ideaSize;
    this.m = phrase.size;
    this.phrase = phrase;
    this.background = background;
    this.pitchSum = new double[m + 1];
    this.timeSum = new double[m + 1];
    for (int j = 0; j < m; j++) {
      pitchSum[j + 1] = pitchSum[j] + background.pitch[j];
      timeSum[j + 1] = timeSum[j] + background.time[j];
    }
    this.best = new double[n * m];
    this.ahead = new double[m];
    this.from = new int[n * m];
  }

  int phraseNotes() {
    return m;
  }

  /** Cells of a table of steps: see {@link #cell}. */
  int steps() {
    return n * m * DROPS * ADDS;
  }

  /** Where the step from pair (i, j) past {@code drops} and {@code adds} notes stands. */
  int cell(int i, int j, int drops, int adds) {
    return ((i * m + j) * DROPS + drops) * ADDS + adds;
  }

  /** The idea's own times, its onsets stretched by {@code scale}. */
  Pacing pacing(Line idea, double scale, RhythmModel rhythm, Edges edges) {
    double[] times = new double[steps()];
    for (int i = 0; i < n; i++) {
      for (int d = 0; d < DROPS && i + d + 1 < n; d++) {
        RhythmModel.Meaning meant = rhythm.meaning(scale * (idea.onset[i + d + 1] - idea.onset[i]));
        for (int j = 0; j < m; j++) {
          for (int a = 0; a < STEPS_AFTER[d] && j + a + 1 < m; a++) {
            double step = phrase.onset[j + a + 1] - phrase.onset[j];
            double log = meant.log(step);
            // Notes put in lie anywhere in the gap, in order.
            if (a > 0) {
              log += LN_FACTORIAL[a] - a * Math.log(Math.max(step, 0.05));
            }
            times[cell(i, j, d, a)] = log;
          }
        }
      }
    }
    return pacing(times, edges);
  }

  /** The times of new material: the idea's pitches in a rhythm of their own. */
  Pacing freePacing(Edges edges) {
    double[] times = new double[steps()];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < m; j++) {
        for (int d = 0; d < DROPS; d++) {
          for (int a = 0; a < ADDS && j + a + 1 < m; a++) {
            times[cell(i, j, d, a)] = timeSum[j + a + 2] - timeSum[j + 1];
          }
        }
      }
    }
    return pacing(times, edges);
  }

  /** These times between other edges. */
  Pacing pacing(double[] times, Edges edges) {
    double[] onwards = new double[n * m];
    double most = NEVER;
    for (int i = n - 1; i >= 0; i--) {
      for (int j = m - 1; j >= 0; j--) {
        double best =
            edges.trail(n - 1 - i) + edges.trailAdds(m - 1 - j) + timeSum[m] - timeSum[j + 1];
        int ways = Math.min(DROPS, n - 1 - i);
        for (int d = 0; d < ways; d++) {
          int cell = cell(i, j, d, 0);
          int to = (i + d + 1) * m + j + 1;
          int steps = Math.min(STEPS_AFTER[d], m - 1 - j);
          for (int a = 0; a < steps; a++) {
            double next = d * edges.drop() + a * edges.add() + times[cell + a] + onwards[to + a];
            best = Math.max(best, next);
          }
        }
        onwards[i * m + j] = best;
        most = Math.max(most, edges.lead(i) + edges.leadAdds(j) + timeSum[j + 1] + best);
      }
    }
    return new Pacing(times, edges, onwards, most);
  }

  /** ln likelihood of the phrase as melodic motion of no idea's. */
  double logAsNew() {
    return pitchSum[m] + timeSum[m];
  }

  /**
   * The most that any alignment can come to, ln likelihood: every pitch taken at its best. {@link
   * #alignAbove} then uses the same bound from each note on.
   *
   * @param notes the most of the ln probabilities of each phrase note's pitch
   */
  double bound(double[] notes, Pacing pacing) {
    double sum = 0;
    for (int j = m - 1; j >= 0; j--) {
      ahead[j] = sum;
      sum += Math.max(notes[j], background.pitch[j]);
    }
    return sum + pacing.most();
  }

  /** For each phrase note the most of its ln probabilities. */
  static double[] best(double[] notes, int m) {
    double[] most = Arrays.copyOf(notes, m);
    for (int cell = m; cell < notes.length; cell++) {
      most[cell % m] = Math.max(most[cell % m], notes[cell]);
    }
    return most;
  }

  /** For each phrase note the most that it can come to as the first note, or by a move. */
  double[] best(double[] notes, double[] moves) {
    double[] most = best(notes, m);
    for (int i = 0; i < n; i++) {
      for (int d = 0; d < DROPS && i + d + 1 < n; d++) {
        for (int j = 0; j < m; j++) {
          for (int a = 0; a < STEPS_AFTER[d] && j + a + 1 < m; a++) {
            most[j + a + 1] = Math.max(most[j + a + 1], moves[cell(i, j, d, a)]);
          }
        }
      }
    }
    return most;
  }

  /**
   * The best alignment's ln likelihood.
   *
   * @param notes ln probability of each phrase note's pitch for each idea note, idea note by idea
   *     note; used for every pair, or for the first pair alone where {@code moves} is given
   * @param moves ln probability of each step's move in pitch, or an empty array
   */
  double align(double[] notes, double[] moves, Pacing pacing) {
    return run(notes, moves, pacing, NEVER);
  }

  /**
   * As {@link #align}, right after {@link #bound} was asked for the same; alignments that cannot
   * come above {@code floor} are given up.
   */
  double alignAbove(double floor, double[] notes, double[] moves, Pacing pacing) {
    return run(notes, moves, pacing, floor);
  }

  private double run(double[] notes, double[] moves, Pacing pacing, double floor) {
    boolean byMove = moves.length > 0;
    double[] times = pacing.times();
    double[] onwards = pacing.ahead();
    Edges edges = pacing.edges();
    double drop = edges.drop();
    double add = edges.add();
    Arrays.fill(best, NEVER);
    score = NEVER;
    endCell = -1;
    for (int i = 0; i < n; i++) {
      double lead = edges.lead(i);
      double trail = edges.trail(n - 1 - i);
      for (int j = 0; j < m; j++) {
        int here = i * m + j;
        double start = lead + edges.leadAdds(j) + pitchSum[j] + timeSum[j + 1] + notes[here];
        if (start > best[here]) {
          best[here] = start;
          from[here] = -1;
        }
        double value = best[here];
        if (value == NEVER || value + ahead[j] + onwards[here] < floor) {
          continue;
        }
        double stop =
            value
                + trail
                + edges.trailAdds(m - 1 - j)
                + (pitchSum[m] - pitchSum[j + 1])
                + (timeSum[m] - timeSum[j + 1]);
        if (stop > score) {
          score = stop;
          endCell = here;
        }
        int ways = Math.min(DROPS, n - 1 - i);
        for (int d = 0; d < ways; d++) {
          double put = value + d * drop;
          int cell = cell(i, j, d, 0);
          int to = (i + d + 1) * m + j + 1;
          int steps = Math.min(STEPS_AFTER[d], m - 1 - j);
          for (int a = 0; a < steps; a++) {
            double next = put + times[cell + a] + (byMove ? moves[cell + a] : notes[to + a]);
            if (next > best[to + a]) {
              best[to + a] = next;
              from[to + a] = here;
            }
            put += add + background.pitch[j + a + 1];
          }
        }
      }
    }
    return score;
  }

  /**
   * The alignment that the last call of {@link #align} found: for each phrase note the idea note
   * that it stands for, or −1.
   */
  int[] path() {
    int[] ideaOf = new int[m];
    Arrays.fill(ideaOf, -1);
    for (int cell = endCell; cell >= 0; cell = from[cell]) {
      ideaOf[cell % m] = cell / m;
    }
    return ideaOf;
  }

  private static final double[] LN_FACTORIAL = {0, 0, Math.log(2), Math.log(6)};
}
