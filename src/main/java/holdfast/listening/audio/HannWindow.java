package holdfast.listening.audio;

/**
 * The window that a stretch of sound is looked at through, so that its ends do not sound: a raised
 * cosine, 0 at both ends and 1 in the middle (von Hann's; Harris 1978, "On the use of windows for
 * harmonic analysis with the discrete Fourier transform").
 */
public final class HannWindow {

  private HannWindow() {}

  /** The window's weights; the ends lie half a sample before the first and after the last. */
  public static float[] of(int length) {
    float[] window = new float[length];
    for (int i = 0; i < length; i++) {
      window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length));
    }
    return window;
  }
}
