package holdfast.listening.audio;

/** Which of two channels is the louder, and how often each stood at full scale. */
final class Loudness {

  /** A sample this near full scale was clipped. */
  private static final float CLIPPED = 0.9998f;

  private final double[] energy = new double[2];
  private final int[] clipped = new int[2];

  void hear(float[][] block, int channels, int frames) {
    for (int c = 0; c < channels; c++) {
      for (int i = 0; i < frames; i++) {
        float value = block[c][i];
        energy[c] += Float.isFinite(value) ? value * value : 0;
        clipped[c] += Math.abs(value) >= CLIPPED ? 1 : 0;
      }
    }
  }

  int louder() {
    return energy[1] > energy[0] ? 1 : 0;
  }

  int clipped(int channel) {
    return clipped[channel];
  }
}
