package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;

/**
 * Sound at half the ear's rate, for what lies under 2.5 kHz: a half-band filter, of which every
 * other tap is zero, by Kaiser's window (Kaiser 1974, "Nonrecursive digital filter design using the
 * I0-sinh window function"). Passes up to 2.5 kHz within 0.01 dB; what folds back onto it is 70 dB
 * down.
 */
final class HalfRate {

  /** Samples a second. */
  static final int RATE = Resampler.EAR_RATE / 2;

  /** Samples at the ear's rate that are needed before and after those that are halved. */
  static final int REACH = 12;

  /** The taps at 1, 3, 5 and so on from the middle, which is a half. */
  private static final float[] TAPS = taps(REACH / 2, 6.8);

  private static final int PIECE = 8192;

  private HalfRate() {}

  private static float[] taps(int count, double beta) {
    double[] exact = new double[count];
    double sum = 0;
    for (int j = 0; j < count; j++) {
      int place = 2 * j + 1;
      double across = (double) place / (2 * count);
      double sinc = Math.sin(Math.PI * place / 2) / (Math.PI * place);
      exact[j] = sinc * bessel(beta * Math.sqrt(1 - across * across)) / bessel(beta);
      sum += 2 * exact[j];
    }
    float[] taps = new float[count];
    for (int j = 0; j < count; j++) {
      taps[j] = (float) (0.5 * exact[j] / sum);
    }
    return taps;
  }

  /** The modified Bessel function of the first kind, of order 0, by its series. */
  private static double bessel(double x) {
    double sum = 1;
    double term = 1;
    for (int n = 1; term > 1e-12 * sum; n++) {
      term *= x * x / (4.0 * n * n);
      sum += term;
    }
    return sum;
  }

  /**
   * Halves what is in memory.
   *
   * @param sound at the ear's rate, beginning {@link #REACH} samples before the first that is
   *     halved and ending as many after the last
   * @param to where every other sample is put, from its start
   * @param count how many
   */
  static void halve(float[] sound, float[] to, int count) {
    float[] between = new float[count + REACH];
    for (int i = 0; i < between.length; i++) {
      between[i] = sound[2 * i + 1];
    }
    for (int i = 0; i < count; i++) {
      to[i] = 0.5f * sound[2 * i + REACH];
    }
    for (int j = 0; j < TAPS.length; j++) {
      add(between, REACH / 2 - 1 - j, REACH / 2 + j, TAPS[j], to, count);
    }
  }

  private static void add(float[] from, int left, int right, float tap, float[] to, int count) {
    for (int i = 0; i < count; i++) {
      to[i] += tap * (from[left + i] + from[right + i]);
    }
  }

  /** Every other sample of a sound, the first at {@code from}. */
  static float[] read(EarSound sound, long from, int count) {
    float[] all = new float[count];
    float[] raw = new float[2 * PIECE + 2 * REACH];
    float[] piece = new float[PIECE];
    for (int done = 0; done < count; done += PIECE) {
      sound.read(from + 2L * done - REACH, raw, 0, raw.length);
      for (int i = 0; i < raw.length; i++) {
        raw[i] = Float.isFinite(raw[i]) ? raw[i] : 0;
      }
      halve(raw, piece, PIECE);
      System.arraycopy(piece, 0, all, done, Math.min(PIECE, count - done));
    }
    return all;
  }
}
