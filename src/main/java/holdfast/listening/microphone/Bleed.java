package holdfast.listening.microphone;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.RunningCanceller;

/**
 * Takes the backing out of what a microphone hears, while both run. The backing is known to the
 * sample; when it is heard is known from the output's clock to some milliseconds, and the canceller
 * finds the rest. Both streams run on by their own samples, so that the way from the loudspeaker to
 * the microphone stays the same; only when the clocks have drifted apart is the backing's stream
 * placed anew.
 */
final class Bleed {

  /** The backing is read so much ahead of when it should be heard, in case it comes earlier. */
  private static final double AHEAD_SECONDS = 0.05;

  /** Two sound cards that have drifted apart by this much are brought together again. */
  private static final double DRIFT_SECONDS = 0.02;

  private final KnownSound sound;
  private final Resampler resampler;
  private final RunningCanceller canceller = new RunningCanceller();
  private final float[] raw;
  private final float[] made;
  private final float[] known;
  private int waiting;
  private long next = Long.MIN_VALUE;
  private double heldBack = Double.NaN;

  /**
   * For blocks of up to so many samples at the ear's rate.
   *
   * @param most the longest block
   */
  Bleed(KnownSound sound, int most) {
    this.sound = sound;
    this.resampler = new Resampler(sound.rate());
    this.raw = new float[1 + (int) Math.ceil((double) most * sound.rate() / Resampler.EAR_RATE)];
    this.made = new float[resampler.mostOutput(raw.length)];
    this.known = new float[2 * most + made.length];
  }

  /**
   * Cleans a block in place.
   *
   * @param samples at the ear's rate
   * @param nanoTime when its first sample was at the microphone
   */
  void clean(float[] samples, int count, long nanoTime) {
    long ahead = Math.round(AHEAD_SECONDS * sound.rate());
    long here =
        sound.sampleHeard(nanoTime)
            + ahead
            + Math.round((double) waiting * sound.rate() / Resampler.EAR_RATE);
    if (next == Long.MIN_VALUE) {
      next = here;
    } else if (Double.isNaN(heldBack)) {
      // The resampler holds some samples back; from the second block on this does not change.
      heldBack = next - here;
    } else if (Math.abs(next - here - heldBack) > DRIFT_SECONDS * sound.rate()) {
      next = here + Math.round(heldBack);
      canceller.forget();
    }
    while (waiting < count) {
      int want =
          Math.min(
              raw.length,
              1 + (int) Math.ceil((double) (count - waiting) * sound.rate() / Resampler.EAR_RATE));
      sound.copy(next, raw, want);
      next += want;
      int got = resampler.push(raw, 0, want, made);
      System.arraycopy(made, 0, known, waiting, got);
      waiting += got;
    }
    canceller.clean(samples, known, count);
    waiting -= count;
    System.arraycopy(known, count, known, 0, waiting);
  }
}
