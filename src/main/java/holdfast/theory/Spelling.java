package holdfast.theory;

import java.util.Optional;

/**
 * Names for the notes of a melody where it stands: the key's own name first, then the name that the
 * chord gives to its note, then the degree above the chord's root; never a double accidental.
 *
 * @param key the key of the tune, where it is known
 * @param harmony what is played under the note
 */
public record Spelling(Optional<Key> key, Harmony harmony) {

  private static final Key NEUTRAL = new Key(new NoteName(Letter.C, 0), Mode.MAJOR);

  /** The name of a pitch, any octave. */
  public NoteName name(int pitch) {
    Optional<Key> diatonic = key.filter(k -> k.scale().contains(pitch));
    if (diatonic.isPresent()) {
      return diatonic.get().spell(pitch);
    }
    return harmony
        .chord()
        .map(chord -> overChord(chord, pitch))
        .orElseGet(() -> key.orElse(NEUTRAL).spell(pitch));
  }

  private static NoteName overChord(ChordSymbol chord, int pitch) {
    int wanted = Math.floorMod(pitch, 12);
    return chord.notes().stream()
        .filter(note -> note.pitchClass() == wanted)
        .findFirst()
        .map(NoteName::simplified)
        .orElseGet(() -> new Key(chord.root(), Mode.MAJOR).spell(pitch));
  }

  /** The pitch with its name and octave. */
  public SpelledPitch pitch(int midi) {
    return SpelledPitch.of(midi, name(midi));
  }
}
