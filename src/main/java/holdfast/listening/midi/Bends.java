package holdfast.listening.midi;

import java.util.Arrays;

/** Where the bend wheel of one channel stood, and when, while a key was down. */
final class Bends {

  /** Moves closer together than this are one move; in seconds. */
  private static final double FINEST = 0.002; // a wheel sends a message every 1 to 10 ms

  /** More moves than this (minutes of steady wheeling in one note) are thinned. */
  private static final int MOST = 1 << 15;

  /** In how many moments of a note the wheel is looked up. */
  private static final int MOMENTS = 63;

  private final double[] moments = new double[MOMENTS];
  private double[] when = new double[64];
  private double[] cents = new double[64];
  private int count;
  private double opening;
  private double finest = FINEST;

  /** Drops what lies behind: no key is down. */
  void forget() {
    opening = last();
    count = 0;
    finest = FINEST;
  }

  void move(double seconds, double to) {
    if (count > 0 && seconds - when[count - 1] < finest) {
      cents[count - 1] = to;
      return;
    }
    if (count == MOST) {
      thin();
    }
    if (count == when.length) {
      when = Arrays.copyOf(when, 2 * count);
      cents = Arrays.copyOf(cents, 2 * count);
    }
    when[count] = seconds;
    cents[count] = to;
    count++;
  }

  /** The middle value over this time. */
  double settledCents(double from, double to) {
    if (count == 0 || when[0] >= to) {
      return opening;
    }
    for (int i = 0; i < MOMENTS; i++) {
      moments[i] = at(from + (i + 0.5) * (to - from) / MOMENTS);
    }
    Arrays.sort(moments);
    return moments[MOMENTS / 2];
  }

  private double at(double seconds) {
    int found = Arrays.binarySearch(when, 0, count, seconds);
    int step = found >= 0 ? found : -found - 2;
    return step < 0 ? opening : cents[step];
  }

  private double last() {
    return count == 0 ? opening : cents[count - 1];
  }

  private void thin() {
    finest *= 2;
    for (int i = 0; i < count / 2; i++) {
      when[i] = when[2 * i + 1];
      cents[i] = cents[2 * i + 1];
    }
    count /= 2;
  }
}
