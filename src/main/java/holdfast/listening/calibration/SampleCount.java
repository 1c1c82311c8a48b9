package holdfast.listening.calibration;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A device's count of samples against the machine's clock, as it was observed. An observation can
 * be late, because a thread was or because the device moves its count in gulps, but hardly ever
 * early; so round a sample the earliest observation counts.
 */
final class SampleCount {

  /** Seconds round a sample whose observations count: many gulps, and no drift to speak of. */
  private static final double ROUND_SECONDS = 0.4;

  /** Before and after a sample the count must tell the same, to so many seconds. */
  private static final double STEADY_SECONDS = 0.002;

  private final int rate;
  private long[] samples = new long[1 << 12];
  private long[] nanos = new long[1 << 12];
  private int count;

  SampleCount(int rate) {
    this.rate = rate;
  }

  /** The device stood at this sample when we looked at this moment. */
  void observe(long sample, long nanoTime) {
    if (count == samples.length) {
      samples = Arrays.copyOf(samples, 2 * count);
      nanos = Arrays.copyOf(nanos, 2 * count);
    }
    samples[count] = sample;
    nanos[count] = nanoTime;
    count++;
  }

  /**
   * The moment that belongs to a sample.
   *
   * @return in seconds of the machine's clock; empty where the count was lost there, because the
   *     device ran dry or too full, or was not looked at
   */
  OptionalDouble secondsOf(double sample) {
    double before = zero(sample, -1);
    double after = zero(sample, 1);
    if (!(Math.abs(before - after) <= STEADY_SECONDS)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Math.min(before, after) + sample / rate);
  }

  /** The moment of sample 0 by the observations on one side of a sample; infinite without any. */
  private double zero(double sample, int side) {
    double earliest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      double away = (samples[i] - sample) * side / rate;
      if (away >= 0 && away <= ROUND_SECONDS) {
        earliest = Math.min(earliest, nanos[i] * 1e-9 - (double) samples[i] / rate);
      }
    }
    return earliest;
  }
}
