package holdfast.motif;

/**
 * What it costs, in ln probability, to begin late or end early in the idea, to stand notes before
 * or after it, and to leave out or put in notes inside.
 */
final class Edges {

  private final double[] leadDrops;
  private final double[] trailDrops;
  private final double[] leadAddLogs;
  private final double[] trailAddLogs;
  private final double drop;
  private final double add;

  private Edges(
      double[] leadDrops,
      double[] trailDrops,
      double[] leadAddLogs,
      double[] trailAddLogs,
      double drop,
      double add) {
    this.leadDrops = leadDrops;
    this.trailDrops = trailDrops;
    this.leadAddLogs = leadAddLogs;
    this.trailAddLogs = trailAddLogs;
    this.drop = drop;
    this.add = add;
  }

  private static final double NEVER = Double.NEGATIVE_INFINITY;

  /** Leaving out one note inside. */
  double drop() {
    return drop;
  }

  /** Putting in one note inside. */
  double add() {
    return add;
  }

  double lead(int dropped) {
    return leadDrops[dropped];
  }

  double trail(int dropped) {
    return trailDrops[dropped];
  }

  double leadAdds(int added) {
    return added < leadAddLogs.length ? leadAddLogs[added] : NEVER;
  }

  double trailAdds(int added) {
    return added < trailAddLogs.length ? trailAddLogs[added] : NEVER;
  }

  /** The whole idea; a note missing or extra anywhere is a slip of the player's. */
  static Edges whole(int n, int m, double slip) {
    double[] drops = slips(n, slip);
    double[] adds = slips(m, slip);
    return new Edges(drops, drops, adds, adds, slip, slip);
  }

  /** The idea's first notes, at least two and not all. */
  static Edges head(int n, int m, double slip) {
    double[] lead = slips(n, NEVER);
    lead[0] = 0;
    double[] trail = new double[n];
    for (int r = 0; r < n; r++) {
      trail[r] = r >= 1 && n - r >= 2 ? -Math.log(Math.max(1, n - 2)) : NEVER;
    }
    double[] adds = slips(m, slip);
    return new Edges(lead, trail, adds, adds, slip, slip);
  }

  /** A later part of the idea, without its first note. */
  static Edges later(int n, int m, double slip) {
    double[] lead = new double[n];
    double[] trail = new double[n];
    for (int r = 0; r < n; r++) {
      lead[r] = r >= 1 ? -Math.log(Math.max(1, n - 2)) : NEVER;
      trail[r] = r == 0 ? Math.log(0.6) : Math.log(0.4 / Math.max(1, n - 2));
    }
    double[] adds = slips(m, slip);
    return new Edges(lead, trail, adds, adds, slip, slip);
  }

  /** The whole idea with at least one note after it. */
  static Edges extendedAfter(int n, int m, double slip) {
    double[] drops = slips(n, slip);
    return new Edges(drops, drops, slips(m, slip), growing(m), slip, slip);
  }

  /** The whole idea with at least one note in front. */
  static Edges extendedBefore(int n, int m, double slip) {
    double[] drops = slips(n, slip);
    return new Edges(drops, drops, growing(m), slips(m, slip), slip, slip);
  }

  /** r slips cost r times one; slips(…, NEVER) allows none. */
  private static double[] slips(int size, double slip) {
    double[] costs = new double[size];
    for (int r = 1; r < size; r++) {
      costs[r] = slip == NEVER ? NEVER : r * slip;
    }
    return costs;
  }

  /** One note or more, each further one half as likely: the geometric distribution. */
  private static double[] growing(int size) {
    double[] costs = new double[size];
    if (size > 0) {
      costs[0] = NEVER;
    }
    for (int r = 1; r < size; r++) {
      costs[r] = r * Math.log(0.5);
    }
    return costs;
  }
}
