package holdfast.listening.pitch;

import holdfast.listening.audio.Resampler;

/**
 * The whole chain from samples to notes: rate, pitches of a frame, pitch path, vibrato, notes. Live
 * or on a file it is the same chain; live it hears the past only. It allocates nothing in steady
 * state and belongs to one thread.
 *
 * <p>Live it speaks twice of each note: at once, within 50 ms of its onset for most, as a first
 * guess that may be taken back; and 0.2 s after its onset, settled, nearly as well as on a file.
 */
public final class Ear {

  /** Lowest pitch that is looked for unless a profile says otherwise: below a bass's low C. */
  public static final double LOWEST_HZ = 60;

  /** Highest pitch that is looked for: over C8, a piccolo's and a whistler's top. */
  public static final double HIGHEST_HZ = 4500;

  private static final int BLOCK = 1024;

  private static final FrameListener NOBODY = (frame, cents, sung, sure, level, flux) -> {};

  private final Resampler resampler;
  private final PitchTracker tracker;
  private final NoteChain[] chains;
  private final float[] ear;

  /**
   * An ear for one take that tells settled notes only.
   *
   * @param rate samples per second of what is pushed
   * @param live whether to tell soon rather than look ahead
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
    this(rate, live, lowestHz, highestHz, levels, Manner.ANYONE, frames, notes);
  }

  /**
   * The same for someone whose manner is known; the gate is for whoever takes the notes.
   *
   * @param manner its smoothing says which shakes are one note
   */
  public Ear(
      int rate,
      boolean live,
      double lowestHz,
      double highestHz,
      Levels levels,
      Manner manner,
      FrameListener frames,
      NoteListener notes) {
    this(
        rate,
        live,
        lowestHz,
        highestHz,
        levels,
        new NoteChain(
            live ? Patience.SETTLED : Patience.FILE, manner.smoothingCents(), frames, notes));
  }

  private Ear(
      int rate,
      boolean live,
      double lowestHz,
      double highestHz,
      Levels levels,
      NoteChain... chains) {
    this.resampler = new Resampler(rate);
    this.chains = chains;
    this.tracker = new PitchTracker(lowestHz, highestHz, live, levels, this::weighed);
    this.ear = new float[resampler.mostOutput(BLOCK)];
  }

  /**
   * A live ear for one take that also tells each note at once.
   *
   * @param rate samples per second of what is pushed
   * @param lowestHz lowest pitch looked for, 55 or more
   * @param highestHz highest pitch looked for, 4500 or less
   * @param levels what is known of the singer's and the room's level
   * @param frames told each frame when it is settled
   * @param early told each note as soon as it is likely; some are taken back
   * @param settled told each note 0.2 s after its onset
   */
  public static Ear early(
      int rate,
      double lowestHz,
      double highestHz,
      Levels levels,
      FrameListener frames,
      NoteListener early,
      NoteListener settled) {
    return new Ear(
        rate,
        true,
        lowestHz,
        highestHz,
        levels,
        new NoteChain(Patience.EARLY, Manner.ANYONE.smoothingCents(), NOBODY, early),
        new NoteChain(Patience.SETTLED, Manner.ANYONE.smoothingCents(), frames, settled));
  }

  private void weighed(long number, FrameView frame, double probability) {
    for (NoteChain chain : chains) {
      chain.push(number, frame, probability);
    }
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
    for (NoteChain chain : chains) {
      chain.end();
    }
  }

  /** Where player and room stand, as they were heard of late. */
  public Levels levels() {
    return tracker.levels();
  }

  /** Seconds of the take before which every beginning and end has been told and is settled. */
  public double toldSeconds() {
    return chains[chains.length - 1].toldSeconds();
  }
}
