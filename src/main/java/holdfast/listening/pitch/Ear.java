package holdfast.listening.pitch;

import holdfast.listening.audio.Resampler;

/**
 * The whole chain from samples to notes: rate, pitch path, vibrato, notes. Live or on a file it is
 * the same chain; live it hears the past only. It allocates nothing in steady state and belongs to
 * one thread.
 */
public final class Ear {

  /** Lowest pitch that is looked for unless a profile says otherwise: below a bass's low C. */
  public static final double LOWEST_HZ = 60;

  /** Highest pitch that is looked for: over C8, a piccolo's and a whistler's top. */
  public static final double HIGHEST_HZ = 4500;

  private static final int BLOCK = 1024;

  private final Resampler resampler;
  private final PitchTracker tracker;
  private final Vibrato vibrato;
  private final NoteFinder finder;
  private final float[] ear;

  /**
   * An ear for one take.
   *
   * @param rate samples per second of what is pushed
   * @param live whether to tell at once rather than look ahead
   * @param lowestHz lowest pitch looked for, 55 or more
   * @param highestHz highest pitch looked for, 4500 or less
   * @param levels what is known of the singer's and the room's level
   * @param frames told each frame
   * @param notes told each note
   */
  public Ear(
      int rate,
      boolean live,
      double lowestHz,
      double highestHz,
      Levels levels,
      FrameListener frames,
      NoteListener notes) {
    this.resampler = new Resampler(rate);
    this.finder = new NoteFinder(live, notes);
    this.vibrato = new Vibrato(live, finder);
    this.tracker =
        new PitchTracker(
            lowestHz,
            highestHz,
            live,
            levels,
            (frame, cents, sung, sure, level, flux) -> {
              frames.frame(frame, cents, sung, sure, level, flux);
              vibrato.frame(frame, cents, sung, sure, level, flux);
            });
    this.ear = new float[resampler.mostOutput(BLOCK)];
  }

  /** Hears the next samples. */
  public void push(float[] samples, int offset, int length) {
    for (int done = 0; done < length; done += BLOCK) {
      int now = Math.min(BLOCK, length - done);
      int count = resampler.push(samples, offset + done, now, ear);
      tracker.push(ear, 0, count);
    }
  }

  /** Ends the take: all that is still open is told. */
  public void end() {
    tracker.end();
    vibrato.end();
    finder.end();
  }

  /** Seconds of the take before which every beginning and end has been told. */
  public double toldSeconds() {
    return finder.toldSeconds();
  }
}
