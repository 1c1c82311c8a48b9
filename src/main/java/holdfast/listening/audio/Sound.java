package holdfast.listening.audio;

/**
 * A take as sound: mono samples at one rate. A plain class, because it holds an array; nobody may
 * change it.
 */
public final class Sound {

  private final int rate;
  private final float[] samples;
  private final int clipped;

  /**
   * A sound.
   *
   * @param rate samples per second
   * @param samples full scale ±1
   * @param clipped samples that stood at full scale as they were recorded
   */
  Sound(int rate, float[] samples, int clipped) {
    this.rate = rate;
    this.samples = samples;
    this.clipped = clipped;
  }

  /** Samples per second. */
  public int rate() {
    return rate;
  }

  /** The samples themselves, full scale ±1; not to be changed. */
  public float[] samples() {
    return samples;
  }

  /** Samples that stood at full scale: the recording was too hot where there are many. */
  public int clipped() {
    return clipped;
  }

  /** Length in seconds. */
  public double seconds() {
    return (double) samples.length / rate;
  }

  /** The same at the ear's rate. */
  public float[] atEarRate() {
    Resampler resampler = new Resampler(rate);
    // A little silence at the end pushes the last samples through the filter.
    int tail = rate / 50;
    float[] padded = java.util.Arrays.copyOf(samples, samples.length + tail);
    float[] out = new float[resampler.mostOutput(padded.length)];
    int written = resampler.push(padded, 0, padded.length, out);
    int wanted = (int) ((long) samples.length * Resampler.EAR_RATE / rate);
    return java.util.Arrays.copyOf(out, Math.min(written, wanted));
  }
}
