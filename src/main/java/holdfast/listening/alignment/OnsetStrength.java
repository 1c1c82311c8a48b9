package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.util.Arrays;

/** How strongly something begins, frame by frame, in bands that are evenly spaced to the ear. */
final class OnsetStrength {

  private static final double LOWEST_HZ = 100;
  private static final double HIGHEST_HZ = 7500;

  private final int window;
  private final int hop;
  private final int bands;
  private final FloatFFT fft;
  private final float[] shape;
  private final int[] edges;

  /**
   * A measure of onsets.
   *
   * @param window samples that are looked at at once
   * @param hop samples from frame to frame
   * @param bands how many bands
   */
  OnsetStrength(int window, int hop, int bands) {
    this.window = window;
    this.hop = hop;
    this.bands = bands;
    this.fft = new FloatFFT(window);
    this.shape = new float[window];
    for (int i = 0; i < window; i++) {
      shape[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / window));
    }
    this.edges = new int[bands + 1];
    for (int b = 0; b <= bands; b++) {
      double hz = LOWEST_HZ * Math.pow(HIGHEST_HZ / LOWEST_HZ, (double) b / bands);
      edges[b] = Math.max(b + 1, (int) Math.round(hz * window / Resampler.EAR_RATE));
    }
  }

  /** Writes rows of strengths, each of {@code frames} frames from sample {@code from} on. */
  void of(EarSound sound, long from, int frames, float[][] rows) {
    float[] work = new float[window];
    float[] before = new float[edges[bands] + 1];
    Arrays.fill(before, 1);
    float scale = 300f / window;
    for (int frame = -1; frame < frames; frame++) {
      sound.read(from + (long) frame * hop - window / 2, work, 0, window);
      for (int i = 0; i < window; i++) {
        work[i] = Float.isFinite(work[i]) ? work[i] * shape[i] : 0;
      }
      fft.realForward(work);
      for (int b = 0; b < bands; b++) {
        double flux = 0;
        double product = 1;
        for (int k = edges[b]; k < edges[b + 1]; k++) {
          // Loudness as the ear takes it: the logarithm, over a floor. Of a product one will do.
          float power = work[2 * k] * work[2 * k] + work[2 * k + 1] * work[2 * k + 1];
          float now = 1 + scale * (float) Math.sqrt(power);
          product *= Math.max(1, now / before[k]);
          before[k] = now;
          if (product > 1e100) {
            flux += Math.log(product);
            product = 1;
          }
        }
        flux += Math.log(product);
        if (frame >= 0) {
          rows[b][frame] = (float) (flux / (edges[b + 1] - edges[b]));
        }
      }
    }
  }
}
