package holdfast.motif;

import java.util.ArrayList;
import java.util.List;

/**
 * Weighs explanations one by one and keeps those that count. One that cannot come near the best so
 * far, whatever its alignment, is not aligned at all.
 */
final class Collected {

  /** An explanation e^−9 times as likely as the best, or less, changes no verdict. */
  private static final double NEGLIGIBLE = 9;

  /**
   * Against new material more is kept, e^−12: it tells phrases apart that all are new, but more or
   * less so.
   */
  private static final double NEGLIGIBLE_AS_NEW = 12;

  private static final double NEVER = Double.NEGATIVE_INFINITY;
  private static final double[] NONE = {};

  private final Aligner aligner;
  private final List<Explanation> found = new ArrayList<>();
  private double floor = NEVER;

  Collected(Aligner aligner) {
    this.aligner = aligner;
  }

  List<Explanation> all() {
    return found;
  }

  /** Keeps an explanation that was weighed elsewhere. */
  void keep(Explanation e) {
    if (e.log() > floor) {
      found.add(e);
      double below = e.treatment() == Treatment.NEW ? NEGLIGIBLE_AS_NEW : NEGLIGIBLE;
      floor = Math.max(floor, e.log() - below);
    }
  }

  /** Below this ln weight nothing counts. */
  double floor() {
    return floor;
  }

  /** Whether even the best alignment that can be thought of would count for nothing. */
  boolean hopeless(double logPrior, PitchMap map, Pacing pacing) {
    return logPrior + aligner.bound(map.best(aligner.phraseNotes()), pacing) < floor;
  }

  /** Aligns, weighs and keeps an explanation whose idea runs forwards. */
  void weigh(
      Treatment treatment,
      double logPrior,
      PitchMap map,
      double scale,
      Pacing pacing,
      String detail) {
    weigh(treatment, logPrior, map, scale, pacing, detail, path -> true);
  }

  /** As above, for what counts only where its alignment passes a test. */
  void weigh(
      Treatment treatment,
      double logPrior,
      PitchMap map,
      double scale,
      Pacing pacing,
      String detail,
      PathTest test) {
    if (hopeless(logPrior, map, pacing)) {
      return;
    }
    double log = logPrior + aligner.alignAbove(floor - logPrior, map.notes(), NONE, pacing);
    if (log <= floor || !test.passes(aligner.path())) {
      return;
    }
    keep(
        new Explanation(
            treatment,
            log,
            map,
            scale,
            false,
            () -> {
              aligner.align(map.notes(), NONE, pacing);
              return aligner.path();
            },
            detail));
  }

  /** A condition on an alignment. */
  interface PathTest {
    boolean passes(int[] ideaOf);
  }
}
