package holdfast.motif;

import java.util.function.IntBinaryOperator;

/**
 * How much alike two lines are, by edit distance over their features, whatever the treatment.
 *
 * <p>Where a key is known: 0.5 of scale degrees, 0.3 of intervals in scale steps with graded cost
 * and 0.2 of rhythm, the mixture that told annotated folk song motifs from their neighbours best
 * (AUC .959 over motifs of 4 to 6 notes). Where none is known: 0.6 of intervals in semitones, a
 * miss costing min(1, d/3), and 0.4 of duration classes, the mixture that followed listeners'
 * ratings of sung copies best (r = .805).
 */
final class Similarity {

  private Similarity() {}

  /** 1 − edit distance over the longer length, a missing or extra item costing 1. */
  static double edit(int n, int m, Cost cost) {
    int longer = Math.max(n, m);
    if (longer == 0) {
      return 1;
    }
    double[] row = new double[m + 1];
    for (int j = 0; j <= m; j++) {
      row[j] = j;
    }
    for (int i = 1; i <= n; i++) {
      double diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= m; j++) {
        double swap = diagonal + cost.of(i - 1, j - 1);
        diagonal = row[j];
        row[j] = Math.min(swap, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return 1 - row[m] / longer;
  }

  /** Cost of taking one item for another, 0 to 1. */
  interface Cost {
    double of(int i, int j);
  }

  /** Agreement of interval sizes in semitones, 0 to 1. */
  static double intervals(Line idea, Line phrase) {
    return edit(
        idea.size - 1,
        phrase.size - 1,
        (i, j) ->
            graded((idea.pitch[i + 1] - idea.pitch[i]) - (phrase.pitch[j + 1] - phrase.pitch[j])));
  }

  /** Agreement of interval sizes in steps of a scale, 0 to 1. */
  static double steps(Line idea, Line phrase, Ladder scale) {
    return edit(
        idea.size - 1,
        phrase.size - 1,
        (i, j) ->
            graded(
                scale.step(idea.pitch[i + 1])
                    - scale.step(idea.pitch[i])
                    - scale.step(phrase.pitch[j + 1])
                    + scale.step(phrase.pitch[j])));
  }

  private static double graded(int off) {
    return Math.min(1, Math.abs(off) / 3.0);
  }

  /** Agreement of scale degrees, octaves aside, 0 to 1. */
  static double degrees(Line idea, Line phrase) {
    return edit(
        idea.size,
        phrase.size,
        (i, j) -> Math.floorMod(idea.pitch[i] - phrase.pitch[j], 12) == 0 ? 0 : 1);
  }

  /** Agreement of ups, downs and repeated notes, 0 to 1. */
  static double contour(Line idea, Line phrase) {
    IntBinaryOperator up = (a, b) -> Integer.signum(b - a);
    return edit(
        idea.size - 1,
        phrase.size - 1,
        (i, j) -> {
          int was = up.applyAsInt(idea.pitch[i], idea.pitch[i + 1]);
          int is = up.applyAsInt(phrase.pitch[j], phrase.pitch[j + 1]);
          return Math.abs(was - is) / 2.0;
        });
  }

  /**
   * Agreement of times between onsets once the phrase's are divided by {@code scale}, 0 to 1: half
   * a step's length off, or more, is no agreement.
   */
  static double rhythm(Line idea, Line phrase, double scale) {
    return edit(
        idea.size - 1,
        phrase.size - 1,
        (i, j) -> {
          double was = Math.max(idea.onset[i + 1] - idea.onset[i], 1e-6);
          double is = Math.max((phrase.onset[j + 1] - phrase.onset[j]) / scale, 1e-6);
          return Math.min(1, Math.abs(Math.log(is / was)) / Math.log(2));
        });
  }
}
