package holdfast.listening.pitch;

/** A stage on the way from decided frames to notes. */
@FunctionalInterface
interface NoteStage {

  /**
   * Takes the next frame.
   *
   * @param frame its number; its middle is at {@code frame * Frames.HOP_SECONDS}
   * @param cents its pitch in cents (A4 = 6900); a guess when not sung
   * @param sung whether it is sung
   * @param sureness probability that the frame by itself is sung, 0 to 1
   * @param levelDb level of all that sounds, in decibels under full scale
   * @param ownDb level of the pitch's own harmonics alone, in decibels under full scale
   * @param flux share of the spectrum that is new against 15 ms before, 0 to 1
   */
  void frame(
      long frame,
      double cents,
      boolean sung,
      double sureness,
      double levelDb,
      double ownDb,
      double flux);
}
