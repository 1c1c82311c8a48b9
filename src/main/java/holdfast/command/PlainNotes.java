package holdfast.command;

import java.util.List;

/** Names of sounding pitches where no key is known, each black key by its commoner name. */
final class PlainNotes {

  private static final List<String> NAMES =
      List.of("C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭", "A", "B♭", "B");

  private PlainNotes() {}

  /** The name of a MIDI pitch with its octave, C4 = 60. */
  static String name(int pitch) {
    return NAMES.get(pitch % 12) + (pitch / 12 - 1);
  }
}
