package holdfast.listening.pitch;

/**
 * From weighed frames to notes: pitch path, ringing strings, vibrato, notes, all with the same
 * patience.
 */
final class NoteChain {

  private final PitchPath path;
  private final Vibrato vibrato;
  private final NoteFinder finder;
  private final Ringing ringing;
  private final float[] levelOf;
  private final float[] fluxOf;

  /**
   * A chain for one take.
   *
   * @param patience how long to wait before telling
   * @param smoothingCents the widest shake that is one note
   * @param frames told each decided frame
   * @param notes told each note
   */
  NoteChain(Patience patience, double smoothingCents, FrameListener frames, NoteListener notes) {
    this.path = new PitchPath(patience.path());
    this.finder = new NoteFinder(patience, notes);
    this.vibrato = new Vibrato(patience.vibrato(), smoothingCents, finder);
    this.ringing =
        new Ringing(
            (frame, cents, sung, sureness, level, own, flux) -> {
              frames.frame(frame, cents, sung, sureness, level, flux);
              vibrato.frame(frame, cents, sung, sureness, level, own, flux);
            });
    this.levelOf = new float[patience.path() + 2];
    this.fluxOf = new float[patience.path() + 2];
  }

  /** Takes the next frame and the probability that the player sounds in it. */
  void push(long number, FrameView frame, double probability) {
    int slot = (int) (number % levelOf.length);
    levelOf[slot] = frame.levelDb;
    fluxOf[slot] = frame.flux;
    if (path.push(frame, probability)) {
      tell();
    }
  }

  /** Ends the take: all that is still open is told. */
  void end() {
    while (path.flush()) {
      tell();
    }
    vibrato.end();
    finder.end();
  }

  private void tell() {
    long frame = path.frame();
    int slot = (int) (frame % levelOf.length);
    ringing.frame(
        frame,
        path.cents(),
        path.isSung(),
        path.probability(),
        levelOf[slot],
        path.harmonicDb(),
        fluxOf[slot]);
  }

  /** Seconds of the take before which every beginning and end has been told. */
  double toldSeconds() {
    return finder.toldSeconds();
  }
}
