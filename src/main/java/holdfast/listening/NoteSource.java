package holdfast.listening;

/** Somewhere that notes come from: a keyboard, a microphone, a demo student. */
public interface NoteSource {

  /** What the user calls it. */
  String name();

  /**
   * Opens the ear.
   *
   * @param secondZeroNanos the moment on {@link System#nanoTime}'s clock that is second 0 of the
   *     take
   * @throws holdfast.mistake.UserMistake when the device is missing, busy or of the wrong kind
   */
  Capture open(long secondZeroNanos);
}
