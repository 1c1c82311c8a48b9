package holdfast.listening.calibration;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A sound whose place in a recording can be found to the sample, however faint, late or coloured: a
 * sine that sweeps up, found by its matched filter (Farina 2000, "Simultaneous measurement of
 * impulse response and distortion with a swept-sine technique").
 */
public final class Chirp {

  /** Length in seconds: long enough to stand out of a loud room, short enough not to annoy. */
  private static final double SECONDS = 0.25;

  /** From and to: what the smallest loudspeakers still play. */
  private static final double FROM_HZ = 500;

  private static final double TO_HZ = 6000;

  /** Half of full scale. */
  private static final double LEVEL = 0.5;

  /** A peak this many times over the rest's root mean square is the chirp and not chance. */
  private static final double CLEAR_PEAK = 8;

  private Chirp() {}

  /** The chirp at a rate, to be played once. */
  public static float[] samples(int rate) {
    int length = (int) (SECONDS * rate);
    float[] chirp = new float[length];
    double octaves = Math.log(TO_HZ / FROM_HZ);
    for (int i = 0; i < length; i++) {
      double share = (double) i / length;
      double phase = 2 * Math.PI * FROM_HZ * SECONDS / octaves * (Math.exp(share * octaves) - 1);
      double edge = Math.min(1, 40 * Math.min(share, 1 - share));
      chirp[i] = (float) (LEVEL * edge * Math.sin(phase));
    }
    return chirp;
  }

  /**
   * Where the chirp begins in a recording.
   *
   * @return the sample, between samples too; empty when it cannot be heard
   */
  public static OptionalDouble find(float[] recording, int rate) {
    float[] chirp = samples(rate);
    int size = Integer.highestOneBit(recording.length + chirp.length) * 2;
    float[] a = Arrays.copyOf(recording, size);
    float[] b = Arrays.copyOf(chirp, size);
    FloatFFT fft = new FloatFFT(size);
    fft.realForward(a);
    fft.realForward(b);
    a[0] = 0;
    a[1] = 0;
    for (int k = 2; k < size; k += 2) {
      float re = a[k] * b[k] + a[k + 1] * b[k + 1];
      a[k + 1] = a[k + 1] * b[k] - a[k] * b[k + 1];
      a[k] = re;
    }
    fft.realInverse(a, true);
    int best = 0;
    double sum = 0;
    for (int i = 0; i < recording.length; i++) {
      sum += a[i] * a[i];
      best = Math.abs(a[i]) > Math.abs(a[best]) ? i : best;
    }
    double rest = Math.sqrt(sum / recording.length);
    if (!(Math.abs(a[best]) > CLEAR_PEAK * rest)) {
      return OptionalDouble.empty();
    }
    if (best == 0 || best == recording.length - 1) {
      return OptionalDouble.of(best);
    }
    // The top of a parabola through the peak and its neighbours.
    double before = Math.abs(a[best - 1]);
    double after = Math.abs(a[best + 1]);
    double bend = before - 2 * Math.abs(a[best]) + after;
    return OptionalDouble.of(best + (bend == 0 ? 0 : 0.5 * (before - after) / bend));
  }
}
