package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.HannWindow;
import java.util.Arrays;

/**
 * How strongly each pitch class sounds in a moment, octaves folded together (Fujishima 1999,
 * "Realtime chord recognition of musical sound"): mean 0, energy 1.
 */
final class Chroma {

  /** Samples of a moment, half a second at half the ear's rate: semitones stand apart. */
  static final int SPAN = 4096;

  /** What is looked at: over the mud of small loudspeakers, under the cymbals. */
  private static final double LOWEST_HZ = 120;

  private static final double HIGHEST_HZ = 2000;

  private static final int FIRST = (int) Math.ceil(LOWEST_HZ * SPAN / HalfRate.RATE);
  private static final int LAST = (int) (HIGHEST_HZ * SPAN / HalfRate.RATE);

  private final int steps;
  private final FloatFFT fft = new FloatFFT(SPAN);
  private final float[] window = HannWindow.of(SPAN);
  private final float[] work = new float[SPAN];

  /** The step of the octave under each bin, and how far it lies from it to the next. */
  private final int[] low = new int[LAST + 1];

  private final float[] share = new float[LAST + 1];
  private final float[] size = new float[LAST + 1];
  private final double[] sums;

  /**
   * A look at moments.
   *
   * @param steps of an octave, from A on
   */
  Chroma(int steps) {
    this.steps = steps;
    this.sums = new double[steps + 1];
    for (int k = FIRST; k <= LAST; k++) {
      double place = steps * Math.log((double) k * HalfRate.RATE / SPAN / 440) / Math.log(2);
      low[k] = Math.floorMod((int) Math.floor(place), steps);
      share[k] = (float) (place - Math.floor(place));
    }
  }

  /** Writes the moment that begins at a sample, at half the ear's rate. */
  void of(float[] half, int from, float[] to) {
    look(half, from);
    Arrays.fill(sums, 0);
    for (int k = FIRST; k <= LAST; k++) {
      sums[low[k]] += (1 - share[k]) * size[k];
      sums[low[k] + 1] += share[k] * size[k];
    }
    sums[0] += sums[steps];
    double mean = 0;
    for (int c = 0; c < steps; c++) {
      mean += sums[c] / steps;
    }
    double energy = 0;
    for (int c = 0; c < steps; c++) {
      energy += (sums[c] - mean) * (sums[c] - mean);
    }
    double scale = 1 / Math.sqrt(energy + 1e-3);
    for (int c = 0; c < steps; c++) {
      to[c] = (float) ((sums[c] - mean) * scale);
    }
  }

  /** The root of each bin's amplitude, which tames a voice in front of a soft backing. */
  private void look(float[] half, int from) {
    for (int i = 0; i < SPAN; i++) {
      work[i] = half[from + i] * window[i];
    }
    fft.realForward(work);
    for (int k = FIRST; k <= LAST; k++) {
      size[k] = work[2 * k] * work[2 * k] + work[2 * k + 1] * work[2 * k + 1];
    }
    for (int k = FIRST; k <= LAST; k++) {
      size[k] = (float) Math.sqrt((float) Math.sqrt(size[k]));
    }
  }
}
