package holdfast.listening.calibration;

import java.util.ArrayList;
import java.util.List;

/**
 * When somebody clapped into the microphone: the level of a few milliseconds leaps far over what it
 * was, and over anything that a click from the headphones brings.
 */
final class Claps {

  /** Samples that are looked at at once, as time: 2 ms. */
  private static final double FRAME_SECONDS = 0.002;

  /** A clap is this many times as loud as what was there, and at least so loud at all. */
  private static final double LEAP = 8;

  private static final double LEAST = 0.03;

  /** After a clap its echo is no other, in seconds. */
  private static final double ECHO = 0.25;

  private Claps() {}

  /** The samples at which claps begin. */
  static List<Long> in(float[] samples, int length, int rate) {
    int frame = (int) (FRAME_SECONDS * rate);
    List<Long> claps = new ArrayList<>();
    double loudest = 0;
    for (int i = 0; i < length; i++) {
      loudest = Math.max(loudest, Math.abs(samples[i]));
    }
    // Soft ticks beside loud claps are clicks that were heard through headphones.
    double least = Math.max(LEAST, 0.2 * loudest);
    double quiet = LEAST / LEAP;
    long deaf = 0;
    for (int from = 0; from + frame <= length; from += frame) {
      double peak = 0;
      for (int i = from; i < from + frame; i++) {
        peak = Math.max(peak, Math.abs(samples[i]));
      }
      if (from >= deaf && peak >= least && peak > LEAP * quiet) {
        claps.add(firstOver(samples, from, frame, 0.5 * peak));
        deaf = from + Math.round(ECHO * rate);
      }
      quiet = 0.95 * quiet + 0.05 * peak;
    }
    return claps;
  }

  private static long firstOver(float[] samples, int from, int frame, double level) {
    for (int i = from; i < from + frame; i++) {
      if (Math.abs(samples[i]) >= level) {
        return i;
      }
    }
    return from;
  }
}
