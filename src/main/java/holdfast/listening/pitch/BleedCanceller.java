package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.HannWindow;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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

  /** Samples of the filter: 100 ms, the early part of a room. */
  private static final int FILTER = 1600;

  /** Samples of the filter before the loudest arrival, since the delay is known to a sample. */
  static final int BEFORE = 32;

  /** Rounds of learning: each knows better than the last where the singer is. */
  private static final int ROUNDS = 3;

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
    float[] aligned = new float[take.length];
    int shift = delay(take, backing) - BEFORE;
    for (int i = Math.max(0, shift); i < take.length && i - shift < backing.length; i++) {
      aligned[i] = backing[i - shift];
    }
    float[] cleaned = take.clone();
    takeOut(cleaned, aligned);
    return cleaned;
  }

  /**
   * Takes the backing out of a take, in place; a take of less than half a second stays as it is.
   *
   * @param aligned what of the backing is heard {@link #BEFORE} samples later in the take
   */
  static void takeOut(float[] take, float[] aligned) {
    if (take.length < 2 * STRETCH) {
      return;
    }
    Way way = new Way(take, aligned);
    way.subtract(take, aligned, way.learned());
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
   * The way from loudspeaker to microphone, as it is learned round by round. Of each stretch only
   * products of the two spectra are kept: what is left of it through any filter follows from them.
   */
  private static final class Way {

    private static final int HALF = STRETCH / 2;
    private static final int STEP = STRETCH - FILTER;

    private final FloatFFT fft = new FloatFFT(STRETCH);
    private final float[] window = HannWindow.of(STRETCH);

    /** Two sounds as one: the first real, the second imaginary; one transform does for both. */
    private final float[] two = new float[2 * STRETCH];

    private final List<Products> stretches = new ArrayList<>();
    private final float[] rest = new float[HALF + 1];
    private final float[] crossRe = new float[HALF];
    private final float[] crossIm = new float[HALF];
    private final float[] power = new float[HALF];
    private final float[] throughRe = new float[HALF];
    private final float[] throughIm = new float[HALF];

    /** Of a stretch, by bins: heard times known (the conjugate), and the power of each. */
    private static final class Products {
      private final float[] crossRe = new float[HALF];
      private final float[] crossIm = new float[HALF];
      private final float[] known = new float[HALF];
      private final float[] heard = new float[HALF];
    }

    Way(float[] take, float[] aligned) {
      for (int from = 0; from + STRETCH <= take.length; from += STRETCH) {
        stretches.add(products(take, aligned, from));
      }
    }

    private Products products(float[] take, float[] aligned, int from) {
      for (int i = 0; i < STRETCH; i++) {
        two[2 * i] = aligned[from + i] * window[i];
        two[2 * i + 1] = take[from + i] * window[i];
      }
      fft.complexForward(two);
      Products all = new Products();
      for (int k = 1; k < HALF; k++) {
        float re = two[2 * k];
        float im = two[2 * k + 1];
        float mirroredRe = two[2 * (STRETCH - k)];
        float mirroredIm = two[2 * (STRETCH - k) + 1];
        float xr = 0.5f * (re + mirroredRe);
        float xi = 0.5f * (im - mirroredIm);
        float yr = 0.5f * (im + mirroredIm);
        float yi = 0.5f * (mirroredRe - re);
        all.crossRe[k] = xr * yr + xi * yi;
        all.crossIm[k] = xr * yi - xi * yr;
        all.known[k] = xr * xr + xi * xi;
        all.heard[k] = yr * yr + yi * yi;
      }
      return all;
    }

    /** The spectrum of the filter from backing to take, {@link #FILTER} samples long. */
    float[] learned() {
      float[] response = new float[STRETCH];
      for (int round = 0; round < ROUNDS; round++) {
        Arrays.fill(crossRe, 0);
        Arrays.fill(crossIm, 0);
        Arrays.fill(power, 0);
        for (Products stretch : stretches) {
          if (round > 0) {
            leave(stretch);
          } else {
            Arrays.fill(rest, 1);
          }
          add(stretch);
        }
        divide(response);
        fft.realInverse(response, true);
        Arrays.fill(response, FILTER, STRETCH, 0);
        fft.realForward(response);
        for (int k = 1; k < HALF; k++) {
          throughRe[k] = response[2 * k];
          throughIm[k] = response[2 * k + 1];
        }
      }
      return response;
    }

    /** What was heard of all that is known, bin by bin; little is known of bins without backing. */
    private void divide(float[] response) {
      double mean = 0;
      for (float value : power) {
        mean += value / HALF;
      }
      response[0] = 0;
      response[1] = 0;
      for (int k = 1; k < HALF; k++) {
        double under = power[k] + 1e-4 * mean + 1e-12;
        response[2 * k] = (float) (crossRe[k] / under);
        response[2 * k + 1] = (float) (crossIm[k] / under);
      }
    }

    /** What is left of a stretch in each bin, in power. */
    private void leave(Products of) {
      float[] re = of.crossRe;
      float[] im = of.crossIm;
      float[] known = of.known;
      float[] heard = of.heard;
      for (int k = 1; k < HALF; k++) {
        float wayRe = throughRe[k];
        float wayIm = throughIm[k];
        float left =
            heard[k]
                - 2 * (wayRe * re[k] + wayIm * im[k])
                + (wayRe * wayRe + wayIm * wayIm) * known[k];
        // Less than nothing is rounding.
        rest[k] = Math.abs(left);
      }
      rest[0] = rest[1];
      rest[HALF] = rest[HALF - 1];
    }

    private void add(Products of) {
      float[] re = of.crossRe;
      float[] im = of.crossIm;
      float[] known = of.known;
      for (int k = 1; k < HALF; k++) {
        float weight = 1 / (rest[k - 1] + rest[k] + rest[k + 1] + 1e-7f);
        crossRe[k] += weight * re[k];
        crossIm[k] += weight * im[k];
        power[k] += weight * known[k];
      }
    }

    /** The take less the aligned backing through the filter: overlap-save, two blocks at once. */
    void subtract(float[] take, float[] aligned, float[] response) {
      // What an inverse transform is divided by, once for all blocks.
      for (int k = 0; k < STRETCH; k++) {
        response[k] /= STRETCH;
      }
      for (int from = 0; from < take.length; from += 2 * STEP) {
        Arrays.fill(two, 0);
        put(aligned, from - FILTER, 0);
        put(aligned, from + STEP - FILTER, 1);
        fft.complexForward(two);
        through(response);
        fft.complexInverse(two, false);
        take(0, take, from);
        take(1, take, from + STEP);
      }
    }

    private void put(float[] sound, int from, int which) {
      for (int i = Math.max(0, -from); i < STRETCH && from + i < sound.length; i++) {
        two[2 * i + which] = sound[from + i];
      }
    }

    private void through(float[] response) {
      two[0] *= response[0];
      two[1] *= response[0];
      two[STRETCH] *= response[1];
      two[STRETCH + 1] *= response[1];
      for (int k = 2; k < STRETCH; k += 2) {
        turn(k, response[k], response[k + 1]);
        turn(2 * STRETCH - k, response[k], -response[k + 1]);
      }
    }

    private void turn(int at, float wayRe, float wayIm) {
      float re = two[at] * wayRe - two[at + 1] * wayIm;
      two[at + 1] = two[at + 1] * wayRe + two[at] * wayIm;
      two[at] = re;
    }

    private void take(int which, float[] from, int at) {
      for (int i = 0; i < STEP && at + i < from.length; i++) {
        from[at + i] -= two[2 * (FILTER + i) + which];
      }
    }
  }
}
