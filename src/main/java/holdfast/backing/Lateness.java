package holdfast.backing;

/**
 * How late messages were sent, against the moment at which they were due. As long as it stays below
 * the time they are sent ahead, nobody hears of it.
 *
 * @param count how many messages
 * @param medianNanos half were less late
 * @param p99Nanos one in a hundred was later
 * @param maxNanos the latest
 */
public record Lateness(long count, long medianNanos, long p99Nanos, long maxNanos) {

  /** Keeps the last few thousand; one thread adds, any may ask. */
  static final class Meter {
    private static final int KEPT = 8192;

    private final long[] last = new long[KEPT];
    private long count;
    private long max;

    synchronized void add(long nanos) {
      last[(int) (count % KEPT)] = nanos;
      count++;
      max = Math.max(max, nanos);
    }

    synchronized Lateness soFar() {
      if (count == 0) {
        return new Lateness(0, 0, 0, 0);
      }
      long[] sorted = java.util.Arrays.copyOf(last, (int) Math.min(count, KEPT));
      java.util.Arrays.sort(sorted);
      return new Lateness(
          count, sorted[sorted.length / 2], sorted[(int) (sorted.length * 0.99)], max);
    }
  }
}
