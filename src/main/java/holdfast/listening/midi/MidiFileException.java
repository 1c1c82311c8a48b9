package holdfast.listening.midi;

import holdfast.mistake.UserMistake;

/** A MIDI file cannot be used; the one sentence names the file, the place and the mend. */
public final class MidiFileException extends UserMistake {

  private static final long serialVersionUID = 1L;

  private MidiFileException(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /** Something is wrong with the file as a whole. */
  static MidiFileException of(String file, String problem, String mend) {
    return new MidiFileException(file + " " + problem + "; " + mend + ".", null);
  }

  /** The file could not be read at all. */
  static MidiFileException of(String file, String problem, String mend, Throwable cause) {
    return new MidiFileException(file + " " + problem + "; " + mend + ".", cause);
  }

  /** Something is wrong at one byte, counted from 0. */
  static MidiFileException at(String file, String place, int offset, String problem, String mend) {
    return new MidiFileException(
        file + ", " + place + ", byte " + offset + ": " + problem + "; " + mend + ".", null);
  }
}
