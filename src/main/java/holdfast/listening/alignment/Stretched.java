package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;

/**
 * A sound on another clock: each sample drawn between four by Lagrange's cubic. Good up to a
 * quarter of the rate, which is where pitch is heard.
 */
final class Stretched implements EarSound {

  private static final int PIECE = 8192;

  /** 0, 1, 2 and so on: compilers make wide instructions of a table sooner than of a cast. */
  private static final float[] RAMP = new float[1024];

  static {
    for (int i = 0; i < RAMP.length; i++) {
      RAMP[i] = i;
    }
  }

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
    for (int done = 0; done < count; ) {
      double at = from + done * step - first;
      int low = (int) at;
      int now = Math.min(count - done, between(at - low, step));
      draw(raw, low - 1, (float) (at - low), (float) (step - 1), to, done, now);
      done += now;
    }
  }

  /** How many samples can be drawn a whole sample apart before the place between leaves 0 to 1. */
  private static int between(double x, double step) {
    double room = step > 1 ? (1 - x) / (step - 1) : step < 1 ? x / (1 - step) : RAMP.length;
    return (int) Math.max(1, Math.min(RAMP.length, Math.ceil(room)));
  }

  /** One step of the sound from sample to sample, and a little more or less each time. */
  private static void draw(
      float[] raw, int start, float place, float more, float[] to, int offset, int count) {
    float[] ramp = RAMP;
    for (int i = 0; i < count; i++) {
      float a = raw[start + i];
      float b = raw[start + i + 1];
      float c = raw[start + i + 2];
      float d = raw[start + i + 3];
      float x = place + ramp[i] * more;
      float third = (d - a) * (1 / 6f) + (b - c) * 0.5f;
      float second = (a + c) * 0.5f - b;
      float one = c - a * (1 / 3f) - b * 0.5f - d * (1 / 6f);
      to[offset + i] = b + x * (one + x * (second + x * third));
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
