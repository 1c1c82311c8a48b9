package holdfast.phrase;

/**
 * The two shapes that time takes in playing: about an expected moment (normal), and anything from
 * short to very long (log-logistic, whose tail can be written down).
 */
final class Spread {

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private Spread() {}

  /** Density of the normal distribution. */
  static double normal(double x, double mean, double sd) {
    double z = (x - mean) / sd;
    return Math.exp(-0.5 * z * z) / (sd * ROOT_TWO_PI);
  }

  /**
   * Chance that a normal value is above x. The logistic curve 1/(1+e^(1.702 z)) keeps within .0095
   * of it (Bowling et al. 2009 give 1.702 for this bound; from memory).
   */
  static double normalAbove(double x, double mean, double sd) {
    return 1 / (1 + Math.exp(1.702 * (x - mean) / sd));
  }

  /** Density of the log-logistic distribution at x; 0 where x is not more than 0. */
  static double logLogistic(double x, double median, double steepness) {
    if (x <= 0) {
      return 0;
    }
    double y = Math.pow(x / median, steepness);
    return steepness / x / (y + 2 + 1 / y);
  }

  /** Chance that a log-logistic value is above x. */
  static double logLogisticAbove(double x, double median, double steepness) {
    return x <= 0 ? 1 : 1 / (1 + Math.pow(x / median, steepness));
  }
}
