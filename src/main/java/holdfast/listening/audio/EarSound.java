package holdfast.listening.audio;

import java.util.Arrays;

/**
 * Mono sound at the ear's rate, of any length, read piece by piece. Two hours of it need no more
 * memory than a minute.
 */
public interface EarSound extends AutoCloseable {

  /** How many samples there are, at {@link Resampler#EAR_RATE}. */
  long length();

  /**
   * Reads samples; before the first and after the last there is silence.
   *
   * @param from the first sample wanted, which may be negative
   * @param to where they are put, full scale ±1
   * @param offset the place in {@code to} of the first
   * @param count how many
   */
  void read(long from, float[] to, int offset, int count);

  /** Length in seconds. */
  default double seconds() {
    return (double) length() / Resampler.EAR_RATE;
  }

  /** A stretch of it, in memory. */
  default float[] samples(long from, int count) {
    float[] stretch = new float[count];
    read(from, stretch, 0, count);
    return stretch;
  }

  /** Lets go of what it is kept in. */
  @Override
  void close();

  /** Sound that is in memory; the array must not be changed. */
  static EarSound of(float[] samples) {
    return new EarSound() {
      @Override
      public long length() {
        return samples.length;
      }

      @Override
      public void read(long from, float[] to, int offset, int count) {
        int first = (int) Math.max(0, Math.min(count, -from));
        int last = (int) Math.max(first, Math.min(count, samples.length - from));
        Arrays.fill(to, offset, offset + first, 0f);
        if (last > first) {
          System.arraycopy(samples, (int) (from + first), to, offset + first, last - first);
        }
        Arrays.fill(to, offset + last, offset + count, 0f);
      }

      @Override
      public void close() {
        // Memory needs no closing.
      }
    };
  }
}
