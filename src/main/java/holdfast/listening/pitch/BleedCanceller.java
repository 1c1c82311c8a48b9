package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.Arrays;

/**
 * Takes a known backing out of a take that it bled into through a loudspeaker.
 *
 * <p>First the delay: the peak of the generalised cross-correlation with phase transform (Knapp and
 * Carter 1976). Then the way from loudspeaker to microphone, as one filter: least squares in the
 * frequency domain, in which every stretch and bin counts the less the more is left there that is
 * not backing, so that the filter is learned in the rests and between the singer's harmonics rather
 * than from the singer. Then the backing through that filter is subtracted.
 */
public final class BleedCanceller {

  /** Samples of a stretch: 256 ms at the ear's rate. */
  private static final int STRETCH = 4096;

  private static final int HOP = STRETCH / 4;

  /** Samples of the filter: 100 ms, the early part of a room. */
  private static final int FILTER = 1600;

  /** Samples of the filter before the loudest arrival, since the delay is known to a sample. */
  private static final int BEFORE = 32;

  /** Rounds of learning: each knows better than the last where the singer is. */
  private static final int ROUNDS = 4;

  /** Samples in which the delay is looked for: 65 s at the ear's rate. */
  private static final int LOOK = 1 << 20;

  /** A backing that arrives this much later or earlier than expected is found: 30 s. */
  private static final int FARTHEST = 480_000;

  private BleedCanceller() {}

  /**
   * The take without the backing.
   *
   * @param take what the microphone heard, at the ear's rate
   * @param backing what the loudspeaker played, at the ear's rate, at any constant delay
   */
  public static float[] clean(float[] take, float[] backing) {
    if (take.length < 2 * STRETCH || backing.length < 2 * STRETCH) {
      return take.clone();
    }
    return clean(take, backing, delay(take, backing));
  }

  /**
   * The same where the delay is known already.
   *
   * @param delay how many samples later than in the backing the backing is heard in the take
   */
  public static float[] clean(float[] take, float[] backing, int delay) {
    if (take.length < 2 * STRETCH) {
      return take.clone();
    }
    float[] aligned = new float[take.length];
    int shift = delay - BEFORE;
    for (int i = Math.max(0, shift); i < take.length && i - shift < backing.length; i++) {
      aligned[i] = backing[i - shift];
    }
    float[] left = take;
    for (int round = 0; round < ROUNDS; round++) {
      left = subtract(take, aligned, learn(take, aligned, left, round > 0));
    }
    return left;
  }

  /** How many samples later than in the backing the backing is heard in the take. */
  public static int delay(float[] take, float[] backing) {
    int length = Math.min(LOOK, Math.max(take.length, backing.length));
    int size = Integer.highestOneBit(length) * 4;
    float[] a = Arrays.copyOf(Arrays.copyOf(take, Math.min(take.length, length)), size);
    float[] b = Arrays.copyOf(Arrays.copyOf(backing, Math.min(backing.length, length)), size);
    FloatFFT fft = new FloatFFT(size);
    fft.realForward(a);
    fft.realForward(b);
    a[0] = 0;
    a[1] = 0;
    for (int k = 2; k < size; k += 2) {
      float re = a[k] * b[k] + a[k + 1] * b[k + 1];
      float im = a[k + 1] * b[k] - a[k] * b[k + 1];
      // Half a whitening: a full one lets bins without any backing speak as loud as the rest.
      float scale = (float) (1 / (Math.pow(re * re + im * im, 0.35) + 1e-12));
      a[k] = re * scale;
      a[k + 1] = im * scale;
    }
    fft.realInverse(a, true);
    int best = 0;
    for (int lag = -Math.min(FARTHEST, size / 2 - 1); lag <= Math.min(FARTHEST, size / 2); lag++) {
      if (Math.abs(a[Math.floorMod(lag, size)]) > Math.abs(a[Math.floorMod(best, size)])) {
        best = lag;
      }
    }
    return best;
  }

  /** The filter from backing to take, {@link #FILTER} samples long. */
  private static float[] learn(float[] take, float[] aligned, float[] left, boolean weighted) {
    FloatFFT fft = new FloatFFT(STRETCH);
    int half = STRETCH / 2;
    double[] crossRe = new double[half];
    double[] crossIm = new double[half];
    double[] power = new double[half];
    double[] rest = new double[half];
    float[] y = new float[STRETCH];
    float[] x = new float[STRETCH];
    float[] e = new float[STRETCH];
    float[] window = new float[STRETCH];
    for (int i = 0; i < STRETCH; i++) {
      window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / STRETCH));
    }
    for (int from = 0; from + STRETCH <= take.length; from += HOP) {
      cut(take, from, window, y);
      cut(aligned, from, window, x);
      cut(left, from, window, e);
      fft.realForward(y);
      fft.realForward(x);
      fft.realForward(e);
      for (int k = 1; k < half; k++) {
        rest[k] = e[2 * k] * e[2 * k] + e[2 * k + 1] * e[2 * k + 1];
      }
      for (int k = 1; k < half; k++) {
        float xr = x[2 * k];
        float xi = x[2 * k + 1];
        float yr = y[2 * k];
        float yi = y[2 * k + 1];
        double near = rest[k] + rest[Math.max(1, k - 1)] + rest[Math.min(half - 1, k + 1)] + 1e-7;
        double weight = weighted ? 1 / near : 1;
        crossRe[k] += weight * (xr * yr + xi * yi);
        crossIm[k] += weight * (xr * yi - xi * yr);
        power[k] += weight * (xr * xr + xi * xi);
      }
    }
    double mean = Arrays.stream(power).average().orElse(0);
    float[] response = new float[STRETCH];
    for (int k = 1; k < half; k++) {
      double under = power[k] + 1e-4 * mean + 1e-12;
      response[2 * k] = (float) (crossRe[k] / under);
      response[2 * k + 1] = (float) (crossIm[k] / under);
    }
    fft.realInverse(response, true);
    return Arrays.copyOf(response, FILTER);
  }

  private static void cut(float[] from, int start, float[] window, float[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] = from[start + i] * window[i];
    }
  }

  /** The take less the aligned backing through the filter: overlap-save. */
  private static float[] subtract(float[] take, float[] aligned, float[] filter) {
    FloatFFT fft = new FloatFFT(STRETCH);
    float[] response = Arrays.copyOf(filter, STRETCH);
    fft.realForward(response);
    int step = STRETCH - FILTER;
    float[] block = new float[STRETCH];
    float[] out = new float[take.length];
    for (int from = 0; from < take.length; from += step) {
      for (int i = 0; i < STRETCH; i++) {
        int at = from - FILTER + i;
        block[i] = at >= 0 && at < aligned.length ? aligned[at] : 0;
      }
      fft.realForward(block);
      block[0] *= response[0];
      block[1] *= response[1];
      for (int k = 2; k < STRETCH; k += 2) {
        float re = block[k] * response[k] - block[k + 1] * response[k + 1];
        block[k + 1] = block[k] * response[k + 1] + block[k + 1] * response[k];
        block[k] = re;
      }
      fft.realInverse(block, true);
      for (int i = 0; i < step && from + i < take.length; i++) {
        out[from + i] = take[from + i] - block[FILTER + i];
      }
    }
    return out;
  }
}
