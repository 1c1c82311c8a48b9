package holdfast.listening.pitch;

/**
 * A histogram that slowly forgets: quantiles of what was lately heard, in constant memory and time.
 */
final class Histogram {

  /** Values are scaled down when their common weight has grown this large. */
  private static final double LARGEST = 1e9;

  private final double[] bins;
  private final double lowest;
  private final double width;
  private final double growth;
  private double weight = 1;
  private double sum;

  /**
   * An empty histogram.
   *
   * @param lowest lower edge of the first bin; lower values count there
   * @param width width of a bin
   * @param count number of bins; higher values count in the last
   * @param halfLife values after which an old one counts half
   */
  Histogram(double lowest, double width, int count, double halfLife) {
    this.bins = new double[count];
    this.lowest = lowest;
    this.width = width;
    this.growth = Math.pow(2, 1 / halfLife);
  }

  /** Adds a value that counts as much as {@code times} new ones. */
  void add(double value, double times) {
    int bin = (int) Math.max(0, Math.min(bins.length - 1, Math.floor((value - lowest) / width)));
    bins[bin] += weight * times;
    sum += weight * times;
  }

  /** One frame has passed: all that was added counts a little less. */
  void age() {
    weight *= growth;
    if (weight > LARGEST) {
      sum = 0;
      for (int i = 0; i < bins.length; i++) {
        bins[i] /= weight;
        sum += bins[i];
      }
      weight = 1;
    }
  }

  /** The value under which the given share lies, to half a bin; {@code otherwise} when empty. */
  double quantile(double share, double otherwise) {
    if (sum <= 0) {
      return otherwise;
    }
    double left = share * sum;
    for (int i = 0; i < bins.length; i++) {
      left -= bins[i];
      if (left <= 0) {
        return lowest + (i + 0.5) * width;
      }
    }
    return lowest + (bins.length - 0.5) * width;
  }
}
