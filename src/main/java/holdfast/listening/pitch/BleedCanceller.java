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
    Way way = new Way(take, aligned);
    for (int round = 0; round < ROUNDS; round++) {
      way.learn();
      way.subtract();
    }
    return way.left;
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

  /**
   * The way from loudspeaker to microphone, as it is learned round by round. The spectra that stay
   * the same in every round are worked out once.
   */
  private static final class Way {

    private static final int HALF = STRETCH / 2;
    private static final int STEP = STRETCH - FILTER;

    private final FloatFFT fft = new FloatFFT(STRETCH);
    private final float[] take;
    private final float[][] heard;
    private final float[][] known;
    private final float[][] blocks;
    private final float[] window = new float[STRETCH];
    private final float[] work = new float[STRETCH];
    private float[] filter = new float[FILTER];
    private float[] left;
    private boolean learned;

    Way(float[] take, float[] aligned) {
      this.take = take;
      this.left = take;
      for (int i = 0; i < STRETCH; i++) {
        window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / STRETCH));
      }
      int stretches = (take.length - STRETCH) / HOP + 1;
      this.heard = new float[stretches][];
      this.known = new float[stretches][];
      for (int s = 0; s < stretches; s++) {
        heard[s] = spectrum(take, s * HOP, new float[STRETCH]);
        known[s] = spectrum(aligned, s * HOP, new float[STRETCH]);
      }
      this.blocks = new float[(take.length + STEP - 1) / STEP][STRETCH];
      for (int b = 0; b < blocks.length; b++) {
        int from = Math.max(0, b * STEP - FILTER);
        int to = Math.min(aligned.length, b * STEP + STEP);
        System.arraycopy(aligned, from, blocks[b], from - b * STEP + FILTER, to - from);
        fft.realForward(blocks[b]);
      }
    }

    private float[] spectrum(float[] from, int start, float[] to) {
      for (int i = 0; i < STRETCH; i++) {
        to[i] = from[start + i] * window[i];
      }
      fft.realForward(to);
      return to;
    }

    /** The filter from backing to take, {@link #FILTER} samples long. */
    void learn() {
      double[] crossRe = new double[HALF];
      double[] crossIm = new double[HALF];
      double[] power = new double[HALF];
      double[] rest = new double[HALF];
      for (int s = 0; s < heard.length; s++) {
        float[] y = heard[s];
        float[] x = known[s];
        if (learned) {
          float[] e = spectrum(left, s * HOP, work);
          for (int k = 1; k < HALF; k++) {
            rest[k] = e[2 * k] * e[2 * k] + e[2 * k + 1] * e[2 * k + 1];
          }
        }
        for (int k = 1; k < HALF; k++) {
          float xr = x[2 * k];
          float xi = x[2 * k + 1];
          float yr = y[2 * k];
          float yi = y[2 * k + 1];
          double near = rest[k] + rest[Math.max(1, k - 1)] + rest[Math.min(HALF - 1, k + 1)] + 1e-7;
          double weight = learned ? 1 / near : 1;
          crossRe[k] += weight * (xr * yr + xi * yi);
          crossIm[k] += weight * (xr * yi - xi * yr);
          power[k] += weight * (xr * xr + xi * xi);
        }
      }
      double mean = Arrays.stream(power).average().orElse(0);
      float[] response = new float[STRETCH];
      for (int k = 1; k < HALF; k++) {
        double under = power[k] + 1e-4 * mean + 1e-12;
        response[2 * k] = (float) (crossRe[k] / under);
        response[2 * k + 1] = (float) (crossIm[k] / under);
      }
      fft.realInverse(response, true);
      filter = Arrays.copyOf(response, FILTER);
      learned = true;
    }

    /** The take less the aligned backing through the filter: overlap-save. */
    void subtract() {
      float[] response = Arrays.copyOf(filter, STRETCH);
      fft.realForward(response);
      float[] out = new float[take.length];
      for (int b = 0; b < blocks.length; b++) {
        float[] block = blocks[b];
        work[0] = block[0] * response[0];
        work[1] = block[1] * response[1];
        for (int k = 2; k < STRETCH; k += 2) {
          work[k] = block[k] * response[k] - block[k + 1] * response[k + 1];
          work[k + 1] = block[k + 1] * response[k] + block[k] * response[k + 1];
        }
        fft.realInverse(work, true);
        int from = b * STEP;
        for (int i = 0; i < STEP && from + i < take.length; i++) {
          out[from + i] = take[from + i] - work[FILTER + i];
        }
      }
      left = out;
    }
  }
}
