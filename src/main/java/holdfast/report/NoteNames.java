package holdfast.report;

import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** Names of sounding pitches for people, spelled as the key spells them: {@code E♭5}. */
final class NoteNames {

  private static final List<String> WITHOUT_KEY =
      List.of("C", "D♭", "D", "E♭", "E", "F", "G♭", "G", "A♭", "A", "B♭", "B");

  private NoteNames() {}

  static String of(int pitch, Optional<Key> key) {
    String name =
        key.map(k -> k.spell(pitch % 12))
            .map(NoteName::display)
            .orElse(WITHOUT_KEY.get(pitch % 12));
    int octave = pitch / 12 - 1;
    // C♭4 sounds as B3, and B♯3 as C4: the octave belongs to the letter.
    if (name.startsWith("C♭")) {
      octave++;
    } else if (name.startsWith("B♯")) {
      octave--;
    }
    return name + octave;
  }
}
