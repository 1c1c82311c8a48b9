package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;

/**
 * A sound on another clock: each sample drawn between four by Lagrange's cubic. Good up to a
 * quarter of the rate, which is where pitch is heard.
 */
final class Stretched implements EarSound {

  private static final int PIECE = 8192;

  private final EarSound sound;
  private final double from;
  private final double step;
  private final long length;
  private final float[] piece = new float[PIECE];

  /**
   * A sound on another clock.
   *
   * @param from the sample of the sound that sample 0 is, between samples too
   * @param step samples of the sound from one sample to the next
   */
  Stretched(EarSound sound, double from, double step, long length) {
    this.sound = sound;
    this.from = from;
    this.step = step;
    this.length = length;
  }

  /** Reads {@code count} samples from {@code from} on, {@code step} apart, into the start of to. */
  static void read(EarSound sound, double from, double step, float[] to, int count) {
    long first = (long) Math.floor(from) - 1;
    int needed = (int) Math.ceil(count * step) + 5;
    float[] raw = new float[needed];
    sound.read(first, raw, 0, needed);
    for (int i = 0; i < count; i++) {
      double at = from + i * step - first;
      int low = (int) at;
      double x = at - low;
      double a = raw[low - 1];
      double b = raw[low];
      double c = raw[low + 1];
      double d = raw[low + 2];
      to[i] =
          (float)
              (-a * x * (x - 1) * (x - 2) / 6
                  + b * (x + 1) * (x - 1) * (x - 2) / 2
                  - c * (x + 1) * x * (x - 2) / 2
                  + d * (x + 1) * x * (x - 1) / 6);
    }
  }

  @Override
  public long length() {
    return length;
  }

  @Override
  public void read(long start, float[] to, int offset, int count) {
    for (int done = 0; done < count; done += PIECE) {
      int now = Math.min(PIECE, count - done);
      read(sound, from + (start + done) * step, step, piece, now);
      System.arraycopy(piece, 0, to, offset + done, now);
    }
  }

  @Override
  public void close() {
    // Whoever opened the sound closes it.
  }
}
