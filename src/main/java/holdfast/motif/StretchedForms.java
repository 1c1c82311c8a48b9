package holdfast.motif;

import java.util.Arrays;
import java.util.List;

/** The idea slower or faster by a clear factor. */
final class StretchedForms {

  /** From this factor on, a slower tempo is an augmentation. */
  static final double LEAST_STRETCHED = 1.33;

  /** From this factor down, a faster tempo is a diminution. */
  static final double LEAST_SHRUNK = 0.75;

  /** The factors of the trade, or their inverses, and how often each. Common practice. */
  private static final double[] FACTORS = {2, 1.5, 3, 4};

  private static final double[] SHARES = {0.72, 0.15, 0.06, 0.03};

  /** Any other factor: a share spread over all of them. */
  private static final double ODD_SHARE = 0.04;

  /** No listener hears a factor beyond this as the same idea. */
  private static final double MOST = 5;

  /** A phrase is tried at a factor that its length or its typical step comes this near to. */
  private static final double NEAR = 1.3;

  /** A factor this near to one of the trade's is that one. */
  private static final double SAME = 1.05;

  private final Comparison c;
  private final List<PitchMap> carried;

  StretchedForms(Comparison c, List<PitchMap> carried) {
    this.c = c;
    this.carried = carried;
  }

  void weigh() {
    if (c.n < 2 || c.m < 2 || c.idea.span() <= 0 || c.phrase.span() <= 0) {
      return;
    }
    double ratio = c.phrase.span() / c.idea.span();
    double typical = typicalStep(c.phrase) / typicalStep(c.idea);
    boolean odd =
        c.m == c.n
            && (ratio > LEAST_STRETCHED || ratio < LEAST_SHRUNK)
            && ratio < MOST
            && ratio > 1 / MOST;
    for (int f = 0; f < FACTORS.length; f++) {
      for (double scale : new double[] {FACTORS[f], 1 / FACTORS[f]}) {
        if (near(ratio, scale, NEAR) || near(typical, scale, NEAR)) {
          weigh(scale, Math.log(SHARES[f]));
        }
        odd &= !near(ratio, scale, SAME);
      }
    }
    if (odd) {
      weigh(ratio, Math.log(ODD_SHARE));
    }
  }

  private void weigh(double scale, double logScale) {
    Treatment treatment = scale > 1 ? Treatment.AUGMENTED : Treatment.DIMINISHED;
    Pacing pacing = c.aligner.pacing(c.idea, scale, c.rhythm, c.plain.edges());
    double prior = c.logPrior(treatment) + logScale;
    for (PitchMap map : carried) {
      if (map.move() != PitchMap.Move.SKEWED || map.semitones() == 0) {
        c.collected.weigh(treatment, prior + Comparison.logShare(map), map, scale, pacing, "");
      }
    }
  }

  private static boolean near(double ratio, double scale, double within) {
    return ratio < scale * within && ratio * within > scale;
  }

  private static double typicalStep(Line line) {
    double[] steps = new double[line.size - 1];
    for (int i = 1; i < line.size; i++) {
      steps[i - 1] = line.onset[i] - line.onset[i - 1];
    }
    Arrays.sort(steps);
    return Math.max(steps[steps.length / 2], 1e-3);
  }
}
