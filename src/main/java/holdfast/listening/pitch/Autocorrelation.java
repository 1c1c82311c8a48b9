package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;
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
  private final FloatFFT inverse;
  private final float[] buffer;
  private final float[] lags;
  private final float[] power;
  private final float[] noise;
  private final float[] smoothed;
  private boolean noiseKnown;
  private double total;
  private double cleanTotal;
  private double noiseTotal;

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
    this.window = new float[size];
    for (int i = 0; i < size; i++) {
      window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / size));
    }
    this.forward = new FloatFFT(fftSize);
    this.inverse = new FloatFFT(fftSize * finer);
    this.buffer = new float[fftSize];
    this.lags = new float[fftSize * finer];
    this.power = new float[fftSize / 2 + 1];
    this.noise = new float[fftSize / 2 + 1];
    this.smoothed = new float[fftSize / 2 + 1];
    this.perWindow = new float[longestLag + 2];
    System.arraycopy(window, 0, buffer, 0, size);
    forward.realForward(buffer);
    squareInto(power);
    toLags();
    for (int lag = 0; lag < perWindow.length; lag++) {
      perWindow[lag] = lags[0] / lags[lag];
    }
    Arrays.fill(power, 0);
  }

  int size() {
    return size;
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

  /** Analyses the samples from {@code start} on; {@link #at} then answers. */
  void analyse(float[] samples, int start) {
    for (int i = 0; i < size; i++) {
      buffer[i] = samples[start + i] * window[i];
    }
    Arrays.fill(buffer, size, fftSize, 0);
    forward.realForward(buffer);
    squareInto(power);
    followNoise();
    total = 1e-20;
    cleanTotal = 1e-20;
    noiseTotal = 1e-20;
    for (int k = 0; k < power.length; k++) {
      float p = power[k];
      float n = NOISE_TAKEN * noise[k];
      total += p;
      noiseTotal += noise[k];
      float clean = Math.max(p - n, SPECTRAL_FLOOR * p);
      power[k] = clean;
      cleanTotal += clean;
    }
    toLags();
    float scale = 1 / Math.max(lags[0], 1e-20f);
    for (int lag = shortestLag - 1; lag <= longestLag + 1; lag++) {
      lags[lag] *= scale * perWindow[lag];
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
  private void followNoise() {
    if (!noiseKnown) {
      System.arraycopy(power, 0, smoothed, 0, power.length);
      // A take may begin with a note: what stands out of the first spectrum is no noise.
      Arrays.sort(power);
      float middle = power[power.length / 2];
      System.arraycopy(smoothed, 0, power, 0, power.length);
      for (int k = 0; k < power.length; k++) {
        noise[k] = Math.min(power[k], FIRST_OVER_MIDDLE * middle);
      }
      noiseKnown = true;
      return;
    }
    for (int k = 0; k < power.length; k++) {
      smoothed[k] = POWER_SMOOTHING * smoothed[k] + (1 - POWER_SMOOTHING) * power[k];
      noise[k] = Math.min(noise[k] * NOISE_RISE, smoothed[k] * MINIMUM_BIAS);
    }
  }

  /** The repetition at a lag, in this window's steps: about 1 for a period, 0 for none. */
  float at(int lag) {
    return lags[lag];
  }

  /** Power of the stretch, full scale sine about 0.19 times the size squared. */
  double total() {
    return total;
  }

  /** The same without the room's noise. */
  double cleanTotal() {
    return cleanTotal;
  }

  double noiseTotal() {
    return noiseTotal;
  }

  double hertzPerBin() {
    return (double) Resampler.EAR_RATE / fftSize;
  }

  /** Power spectrum of the last stretch without the noise, by bin. */
  float[] power() {
    return power;
  }

  private void squareInto(float[] power) {
    int half = fftSize / 2;
    power[0] = buffer[0] * buffer[0];
    power[half] = buffer[1] * buffer[1];
    for (int k = 1; k < half; k++) {
      float re = buffer[2 * k];
      float im = buffer[2 * k + 1];
      power[k] = re * re + im * im;
    }
  }

  /** Power spectrum to lags: a transform of a real, even row, longer when lags are finer. */
  private void toLags() {
    int half = fftSize / 2;
    Arrays.fill(lags, 0);
    lags[0] = power[0];
    for (int k = 1; k < half; k++) {
      lags[2 * k] = power[k];
    }
    if (finer == 1) {
      lags[1] = power[half];
    } else {
      lags[2 * half] = power[half] / 2;
    }
    inverse.realInverse(lags, false);
  }
}
