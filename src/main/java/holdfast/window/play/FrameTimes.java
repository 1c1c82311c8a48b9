package holdfast.window.play;

import java.util.Arrays;

/** How long the last frames took, from the look at the clock to the last pixel. */
public final class FrameTimes {

  private static final int KEPT = 1 << 14;

  private final long[] nanos = new long[KEPT];
  private final long[] cpuNanos = new long[KEPT];
  private int count;

  /** One frame more. */
  void add(long nanosTaken, long cpuNanosTaken) {
    nanos[count % KEPT] = nanosTaken;
    cpuNanos[count % KEPT] = cpuNanosTaken;
    count++;
  }

  /** Forgets what was measured so far. */
  public void forget() {
    count = 0;
  }

  /** How many frames there were. */
  public int count() {
    return count;
  }

  /**
   * The time that this part of the frames stayed below, in milliseconds.
   *
   * @param part 0.5 for the median, 0.99 for all but one in a hundred
   */
  public double millis(double part) {
    return millis(nanos, part);
  }

  /** The same of the work alone, without the time in which other programs had the processor. */
  public double cpuMillis(double part) {
    return millis(cpuNanos, part);
  }

  private double millis(long[] measured, double part) {
    int kept = Math.min(count, KEPT);
    if (kept == 0) {
      return 0;
    }
    long[] sorted = Arrays.copyOf(measured, kept);
    Arrays.sort(sorted);
    return sorted[Math.min(kept - 1, (int) Math.floor(part * kept))] / 1e6;
  }
}
