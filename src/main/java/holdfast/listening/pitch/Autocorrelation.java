package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.HannWindow;
import holdfast.listening.audio.Resampler;
import java.util.Arrays;

/**
 * How strongly a stretch of sound repeats itself at each lag.
 *
 * <p>The autocorrelation of a Hann-windowed stretch, divided by that of the window (Boersma 1993,
 * "Accurate short-term analysis of the fundamental frequency and the harmonics-to-noise ratio of a
 * sampled sound"), by Fourier transform. The steady noise of the room is taken away from the power
 * spectrum on the way. A perfect period gives 1; one minus it is on the scale of YIN's normalised
 * difference (de Cheveigné and Kawahara 2002).
 */
final class Autocorrelation {

  /** Steps of lag per sample: peaks of high notes, 4 samples wide, need a finer grid. */
  private final int finer;

  private final int size;
  private final int fftSize;
  private final int shortestLag;
  private final int longestLag;
  private final float[] window;
  private final float[] perWindow;
  private final FloatFFT forward;
  private final float[] buffer;
  private final float[] row;
  private final float[] lags;
  private final float[] sine;
  private final float[] cosine;
  private final float[] raw;
  private final float[] power;
  private final float[] noise;
  private final float[] smoothed;
  private boolean noiseKnown;

  /**
   * An analysis window.
   *
   * @param size samples it spans
   * @param fftSize power of two, at least size plus the longest lag
   * @param lowestHz lowest pitch looked for
   * @param highestHz highest pitch looked for
   * @param finer steps of lag per sample, a power of two
   */
  Autocorrelation(int size, int fftSize, double lowestHz, double highestHz, int finer) {
    this.size = size;
    this.fftSize = fftSize;
    this.finer = finer;
    this.shortestLag = (int) Math.floor(finer * Resampler.EAR_RATE / highestHz);
    this.longestLag = (int) Math.ceil(finer * Resampler.EAR_RATE / lowestHz) + 1;
    this.window = HannWindow.of(size);
    this.forward = new FloatFFT(fftSize / 2);
    this.sine = new float[fftSize / 4 + 1];
    this.cosine = new float[fftSize / 4 + 1];
    for (int k = 0; k <= fftSize / 4; k++) {
      sine[k] = (float) Math.sin(2 * Math.PI * k / fftSize);
      cosine[k] = (float) Math.cos(2 * Math.PI * k / fftSize);
    }
    this.buffer = new float[fftSize];
    this.row = new float[fftSize * finer / 2 + 1];
    this.raw = new float[fftSize / 2 + 1];
    this.power = new float[fftSize / 2 + 1];
    this.noise = new float[fftSize / 2 + 1];
    this.smoothed = new float[fftSize / 2 + 1];
    this.perWindow = new float[(longestLag + 3) / 2 * 2];
    this.lags = new float[perWindow.length];
    System.arraycopy(window, 0, buffer, 0, size);
    squareInto(power);
    toRow();
    new CosinePair(row.length - 1).transform(row, row, lags, lags);
    for (int lag = 0; lag < perWindow.length; lag++) {
      perWindow[lag] = 1 / lags[lag];
    }
  }

  int shortestLag() {
    return shortestLag;
  }

  int longestLag() {
    return longestLag;
  }

  /** Hertz of a lag in this window's steps. */
  double hertz(double lag) {
    return finer * Resampler.EAR_RATE / lag;
  }

  /**
   * Analyses samples in two windows, each from a place of its own on; {@link #at} then answers.
   *
   * @param passed frames since the last look, for which the noise is followed; none: it is not
   * @param lags a pair as long as the rows of both
   */
  static void analyse(
      float[] samples,
      Autocorrelation a,
      int startA,
      Autocorrelation b,
      int startB,
      int passed,
      CosinePair lags) {
    a.look(samples, startA, passed);
    b.look(samples, startB, passed);
    lags.transform(a.row, b.row, a.lags, b.lags);
    a.levelLags();
    b.levelLags();
  }

  /** Steps of lag in its whole row. */
  int steps() {
    return row.length - 1;
  }

  private void look(float[] samples, int start, int passed) {
    System.arraycopy(samples, start, buffer, 0, size);
    for (int i = 0; i < size; i++) {
      buffer[i] *= window[i];
    }
    Arrays.fill(buffer, size, fftSize, 0);
    squareInto(raw);
    if (passed > 0) {
      followNoise(passed);
    }
    for (int k = 0; k < power.length; k++) {
      power[k] = Math.max(raw[k] - NOISE_TAKEN * noise[k], SPECTRAL_FLOOR * raw[k]);
    }
    toRow();
  }

  private void levelLags() {
    for (int lag = 0; lag < lags.length; lag++) {
      lags[lag] *= perWindow[lag];
    }
  }

  /** How much of the measured noise is taken away; more than 1, since noise fluctuates. */
  private static final float NOISE_TAKEN = 1.5f;

  /** What is always left of a bin, so that no bin falls to nothing (spectral subtraction). */
  private static final float SPECTRAL_FLOOR = 0.05f;

  /** How fast the noise may grow, as a factor per frame: 3 dB a second. */
  private static final float NOISE_RISE = 1.00347f;

  /** Smoothing of a bin's power over time before its minimum is followed; about 50 ms. */
  private static final float POWER_SMOOTHING = 0.9f;

  /** In the first spectrum, bins higher than this over the middle one are taken for sound. */
  private static final float FIRST_OVER_MIDDLE = 3;

  /** The minimum of a smoothed noise power lies under its mean by about this factor. */
  private static final float MINIMUM_BIAS = 1.6f;

  /** The noise is what a bin falls back to in every rest: the followed minimum of its power. */
  private void followNoise(int frames) {
    if (!noiseKnown) {
      System.arraycopy(raw, 0, smoothed, 0, raw.length);
      // A take may begin with a note: what stands out of the first spectrum is no noise.
      Arrays.sort(raw);
      float middle = raw[raw.length / 2];
      System.arraycopy(smoothed, 0, raw, 0, raw.length);
      for (int k = 0; k < raw.length; k++) {
        noise[k] = Math.min(raw[k], FIRST_OVER_MIDDLE * middle);
      }
      noiseKnown = true;
      return;
    }
    float smoothing = power(POWER_SMOOTHING, frames);
    float rise = power(NOISE_RISE, frames);
    for (int k = 0; k < raw.length; k++) {
      smoothed[k] = smoothing * smoothed[k] + (1 - smoothing) * raw[k];
      noise[k] = Math.min(noise[k] * rise, smoothed[k] * MINIMUM_BIAS);
    }
  }

  private static float power(float of, int times) {
    float power = of;
    for (int i = 1; i < times; i++) {
      power *= of;
    }
    return power;
  }

  /** The repetition at a lag, in this window's steps: about 1 for a period, 0 for none. */
  float at(int lag) {
    return lags[lag];
  }

  /** Power of the stretch, full scale sine about 0.19 times the size squared. */
  double total() {
    return 1e-20 + Sums.of(raw, 0, raw.length);
  }

  /** Power of the room's noise in it. */
  double noiseTotal() {
    return 1e-20 + Sums.of(noise, 0, noise.length);
  }

  double hertzPerBin() {
    return (double) Resampler.EAR_RATE / fftSize;
  }

  /** Power spectrum of the last stretch without the noise, by bin. */
  float[] power() {
    return power;
  }

  /**
   * The power spectrum of what is in the buffer: its even and odd samples through one complex
   * transform of half the length, taken apart bin by bin (Cooley, Lewis and Welch 1970).
   */
  private void squareInto(float[] to) {
    int half = fftSize / 2;
    forward.complexForward(buffer);
    to[0] = (buffer[0] + buffer[1]) * (buffer[0] + buffer[1]);
    to[half] = (buffer[0] - buffer[1]) * (buffer[0] - buffer[1]);
    for (int k = 1; k <= half / 2; k++) {
      int here = 2 * k;
      int there = fftSize - here;
      float evenRe = 0.5f * (buffer[here] + buffer[there]);
      float evenIm = 0.5f * (buffer[here + 1] - buffer[there + 1]);
      float re = 0.5f * (buffer[here + 1] + buffer[there + 1]);
      float im = 0.5f * (buffer[there] - buffer[here]);
      float oddRe = re * cosine[k] + im * sine[k];
      float oddIm = im * cosine[k] - re * sine[k];
      float plusRe = evenRe + oddRe;
      float plusIm = evenIm + oddIm;
      float minusRe = evenRe - oddRe;
      float minusIm = evenIm - oddIm;
      to[k] = plusRe * plusRe + plusIm * plusIm;
      to[half - k] = minusRe * minusRe + minusIm * minusIm;
    }
  }

  /** One side of the even row whose transform is 1 at lag 0; longer when lags are finer. */
  private void toRow() {
    int half = fftSize / 2;
    double atZero = Sums.of(power, 0, power.length) - 0.5 * (power[0] + power[half]);
    float scale = (float) (1 / Math.max(atZero, 1e-20));
    for (int k = 0; k < power.length; k++) {
      row[k] = power[k] * scale;
    }
    if (finer > 1) {
      row[half] *= 0.5f;
    }
  }
}
