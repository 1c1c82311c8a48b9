package holdfast.motif;

/**
 * Where an alignment may go as far as times, and notes left out and put in, are concerned: the same
 * for all pitches that may have been meant.
 *
 * <p>A plain class, because it holds arrays; nobody may change them.
 */
final class Pacing {

  private final double[] times;
  private final Edges edges;
  private final double[] ahead;
  private final double most;

  Pacing(double[] times, Edges edges, double[] ahead, double most) {
    this.times = times;
    this.edges = edges;
    this.ahead = ahead;
    this.most = most;
  }

  /** Ln densities of the times of all steps, in the aligner's cells. */
  double[] times() {
    return times;
  }

  /** What leaving out and putting in costs. */
  Edges edges() {
    return edges;
  }

  /** For each pair, at i·m + j, the most that all this can still come to after it. */
  double[] ahead() {
    return ahead;
  }

  /** The most that it can come to at all. */
  double most() {
    return most;
  }
}
