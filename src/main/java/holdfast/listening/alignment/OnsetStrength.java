package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.HannWindow;
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
  private final float[] before;
  private final float[] now;
  private final float[] rises;

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
    this.shape = HannWindow.of(window);
    this.edges = new int[bands + 1];
    for (int b = 0; b <= bands; b++) {
      double hz = LOWEST_HZ * Math.pow(HIGHEST_HZ / LOWEST_HZ, (double) b / bands);
      edges[b] = Math.max(b + 1, (int) Math.round(hz * window / Resampler.EAR_RATE));
    }
    this.before = new float[edges[bands]];
    this.now = new float[edges[bands]];
    this.rises = new float[edges[bands]];
  }

  /** Writes rows of strengths, each of {@code frames} frames from sample {@code from} on. */
  void of(EarSound sound, long from, int frames, float[][] rows) {
    float[] work = new float[window];
    Arrays.fill(before, 1);
    for (int frame = -1; frame < frames; frame++) {
      sound.read(from + (long) frame * hop - window / 2, work, 0, window);
      hear(work);
      for (int b = 0; b < bands && frame >= 0; b++) {
        rows[b][frame] = risen(edges[b], edges[b + 1]);
      }
    }
  }

  /** By how much each bin has risen, loop by loop, so that compilers make wide instructions. */
  private void hear(float[] samples) {
    for (int i = 0; i < window; i++) {
      samples[i] = Float.isFinite(samples[i]) ? samples[i] * shape[i] : 0;
    }
    fft.realForward(samples);
    int first = edges[0];
    int end = edges[bands];
    for (int k = first; k < end; k++) {
      now[k] = samples[2 * k] * samples[2 * k] + samples[2 * k + 1] * samples[2 * k + 1];
    }
    // Loudness as the ear takes it: the logarithm, over a floor.
    float scale = 300f / window;
    for (int k = first; k < end; k++) {
      now[k] = 1 + scale * (float) Math.sqrt(now[k]);
    }
    for (int k = first; k < end; k++) {
      rises[k] = Math.max(1, now[k] / before[k]);
    }
    System.arraycopy(now, first, before, first, end - first);
  }

  /** The mean logarithm of a band's rises; of a product one logarithm will do. */
  private float risen(int from, int to) {
    double flux = 0;
    double product = 1;
    for (int k = from; k < to; k++) {
      product *= rises[k];
      if (product > 1e100) {
        flux += Math.log(product);
        product = 1;
      }
    }
    return (float) ((flux + Math.log(product)) / (to - from));
  }
}
