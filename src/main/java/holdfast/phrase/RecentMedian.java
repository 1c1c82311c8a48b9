package holdfast.phrase;

import java.util.Arrays;

/** The middle of the last few values: what has been usual lately, undisturbed by one odd value. */
final class RecentMedian {

  private final double[] values;
  private final double[] sorted;
  private int added;

  RecentMedian(int howMany) {
    values = new double[howMany];
    sorted = new double[howMany];
  }

  void add(double value) {
    values[added % values.length] = value;
    added++;
  }

  int count() {
    return Math.min(added, values.length);
  }

  /** The upper median of the values kept; {@code otherwise} while there is none. */
  double or(double otherwise) {
    int n = count();
    if (n == 0) {
      return otherwise;
    }
    System.arraycopy(values, 0, sorted, 0, n);
    Arrays.sort(sorted, 0, n);
    return sorted[n / 2];
  }

  void clear() {
    added = 0;
  }
}
