package holdfast.listening;

import holdfast.time.TakeClock;
import java.nio.file.Path;

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

  /**
   * The same source, which keeps the sound that it hears as a WAV file while it listens. A source
   * without sound, as a keyboard is, stays as it is.
   *
   * @param file a file that does not exist yet; when the device comes back after a break, the sound
   *     goes on in a second one beside it
   */
  default NoteSource keepingSoundIn(Path file) {
    return this;
  }
}
