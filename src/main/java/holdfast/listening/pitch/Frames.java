package holdfast.listening.pitch;

import holdfast.listening.audio.Resampler;

/** The time grid and the units that all stages of the ear share. */
public final class Frames {

  /** Samples of the ear's rate from one frame to the next. */
  public static final int HOP = 80;

  /** Seconds from one frame to the next: 5 ms, so that an onset is placed well within 10 ms. */
  public static final double HOP_SECONDS = (double) HOP / Resampler.EAR_RATE;

  private static final double CENTS_PER_NEPER = 1200 / Math.log(2);

  private Frames() {}

  /** Hertz to cents above MIDI 0 (A4 = 6900). */
  public static double cents(double hz) {
    return 6900 + CENTS_PER_NEPER * Math.log(hz / 440);
  }

  /** Cents above MIDI 0 to hertz. */
  public static double hertz(double cents) {
    return 440 * Math.exp((cents - 6900) / CENTS_PER_NEPER);
  }
}
