package holdfast.listening.audio;

/**
 * Brings a stream of samples of any rate to the ear's own rate, by windowed-sinc interpolation (J.
 * O. Smith, "Digital Audio Resampling Home Page", CCRMA). Takes blocks of any size; allocates
 * nothing after it is made.
 */
public final class Resampler {

  /**
   * Samples per second inside the ear. 8 kHz of band holds the highest fundamental asked for (C8,
   * 4186 Hz) and the harmonics that decide lower pitches.
   */
  public static final int EAR_RATE = 16_000;

  /** Zero crossings of the sinc on each side: under 1 ms of delay, 60 dB of stop band. */
  private static final int CROSSINGS = 10;

  /** The pass band, as a share of the lower of the two rates' half. */
  private static final double PASS_BAND = 0.9;

  /** Most sub-sample positions of the filter that are tabled: 44.1 kHz needs 160. */
  private static final int MOST_PHASES = 1024;

  private final int inRate;
  private final int phases;

  /** A multiple of four. */
  private final int taps;

  private final float[] table;
  private final float[] history;
  private int filled;

  /** Input samples that have fallen out of the history's front. */
  private long dropped;

  /** The next output sample's number. */
  private long outIndex;

  /** From {@code inRate} samples per second, 1000 or more, to {@link #EAR_RATE}. */
  public Resampler(int inRate) {
    if (inRate < 1000) {
      throw new IllegalArgumentException("a sample rate must be 1000 or more, not " + inRate);
    }
    this.inRate = inRate;
    int exact = EAR_RATE / gcd(inRate, EAR_RATE);
    this.phases = Math.min(exact, MOST_PHASES);
    double cutoff = PASS_BAND * Math.min(1.0, (double) EAR_RATE / inRate);
    int half = 2 * (int) Math.ceil(CROSSINGS / cutoff / 2);
    this.taps = 2 * half;
    this.table = new float[phases * taps];
    for (int p = 0; p < phases; p++) {
      double sum = 0;
      for (int t = 0; t < taps; t++) {
        double x = t - (half - 1) - (double) p / phases;
        double window = Math.abs(x) >= half ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x / half);
        double y = Math.PI * cutoff * x;
        double value = cutoff * (Math.abs(x) < 1e-9 ? 1 : Math.sin(y) / y) * window;
        table[p * taps + t] = (float) value;
        sum += value;
      }
      for (int t = 0; t < taps; t++) {
        table[p * taps + t] /= (float) sum;
      }
    }
    this.history = new float[taps + 8192];
    // Silence before the first sample, so that output 0 stands at input 0.
    this.filled = half - 1;
    this.dropped = -(half - 1);
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  /** The most output samples that one call with {@code length} input samples can give. */
  public int mostOutput(int length) {
    return (int) ((long) length * EAR_RATE / inRate) + 2;
  }

  /**
   * Takes {@code length} samples and writes what they complete.
   *
   * @return how many samples were written to {@code out}, from its start
   */
  public int push(float[] in, int offset, int length, float[] out) {
    if (inRate == EAR_RATE) {
      System.arraycopy(in, offset, out, 0, length);
      outIndex += length;
      return length;
    }
    int written = 0;
    int taken = 0;
    while (taken < length) {
      int room = Math.min(length - taken, history.length - filled);
      System.arraycopy(in, offset + taken, history, filled, room);
      filled += room;
      taken += room;
      written = drain(out, written);
    }
    return written;
  }

  private int drain(float[] out, int already) {
    int written = already;
    while (true) {
      // The output's place in the input is outIndex * inRate / EAR_RATE: whole part and phase.
      long scaled = outIndex * inRate;
      long whole = scaled / EAR_RATE;
      int phase = (int) ((scaled % EAR_RATE) * phases / EAR_RATE);
      int start = (int) (whole - dropped) - (taps / 2 - 1);
      if (start + taps > filled) {
        int keepFrom = Math.max(0, Math.min(start, filled));
        System.arraycopy(history, keepFrom, history, 0, filled - keepFrom);
        filled -= keepFrom;
        dropped += keepFrom;
        return written;
      }
      out[written++] = product(start, phase * taps);
      outIndex++;
    }
  }

  /** The filter's row times the history: four sums, so that no addition waits for another. */
  private float product(int start, int row) {
    float[] sound = history;
    float[] filter = table;
    int count = taps;
    float a = 0;
    float b = 0;
    float c = 0;
    float d = 0;
    for (int t = 0; t < count - 3; t += 4) {
      a += sound[start + t] * filter[row + t];
      b += sound[start + t + 1] * filter[row + t + 1];
      c += sound[start + t + 2] * filter[row + t + 2];
      d += sound[start + t + 3] * filter[row + t + 3];
    }
    return a + b + (c + d);
  }
}
