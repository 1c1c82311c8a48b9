package holdfast.listening;

import holdfast.time.TakeClock;

/** Somewhere that notes come from: a keyboard, a microphone, a demo student. */
public interface NoteSource {

  /** What the user calls it. */
  String name();

  /**
   * Opens the ear.
   *
   * @param clock which second of the take a moment is
   * @throws holdfast.mistake.UserMistake when the device is missing, busy or of the wrong kind
   */
  Capture open(TakeClock clock);
}
