package holdfast.listening.microphone;

import java.util.Optional;

/**
 * What is wrong with what comes in: nothing at all, or too much. Each is said once until it has
 * been better for a while, for a player who sings should not read.
 */
final class Complaints {

  /** Seconds without a sound before it is told: longer than any rest that is counted. */
  static final double SILENT_SECONDS = 8;

  /**
   * A room is never this still, in full scale (−80 dB): a muted microphone gives zeros or one bit.
   */
  private static final float STILL = 1e-4f;

  /** So many samples at full scale within a second are heard as a crackle; one may be a click. */
  private static final int CLIPPED_A_SECOND = 20;

  /** After so many seconds without clipping it may be told again. */
  private static final double QUIET_AGAIN_SECONDS = 30;

  private final String name;
  private double still;
  private boolean stillTold;
  private double second;
  private long clippedBefore;
  private double sinceClipped = Double.POSITIVE_INFINITY;

  /** Of the microphone of this name. */
  Complaints(String name) {
    this.name = name.isEmpty() ? "the microphone" : "\"" + name + "\"";
  }

  /**
   * Listens to the next samples.
   *
   * @param clipped samples so far that stood at full scale
   * @return a sentence, when something is to be said now
   */
  Optional<String> hear(float[] samples, int count, int rate, long clipped) {
    double seconds = (double) count / rate;
    float peak = 0;
    for (int i = 0; i < count; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    still = peak > STILL ? 0 : still + seconds;
    stillTold &= still > 0;
    if (still >= SILENT_SECONDS && !stillTold) {
      stillTold = true;
      return Optional.of(
          "I hear nothing at all on "
              + name
              + "; see whether it is switched off or muted, or choose another.");
    }
    return clipping(seconds, clipped);
  }

  private Optional<String> clipping(double seconds, long clipped) {
    second += seconds;
    sinceClipped += seconds;
    if (second < 1) {
      return Optional.empty();
    }
    second = 0;
    boolean clips = clipped - clippedBefore >= CLIPPED_A_SECOND;
    clippedBefore = clipped;
    boolean told = sinceClipped < QUIET_AGAIN_SECONDS;
    if (!clips) {
      return Optional.empty();
    }
    sinceClipped = 0;
    return told
        ? Optional.empty()
        : Optional.of(
            "You are too loud for "
                + name
                + "; step back a little, or turn it down in the system's settings.");
  }
}
