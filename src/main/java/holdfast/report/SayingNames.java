package holdfast.report;

import holdfast.carry.Adaptation;
import holdfast.carry.Saying;
import holdfast.chart.ChordSpan;
import holdfast.harmony.ToneName;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.SpelledPitch;
import java.util.List;
import java.util.Optional;

/** Names for the notes of an idea over chords, spelled as the reasons beside them spell them. */
final class SayingNames {

  private SayingNames() {}

  /** The notes of one choice, each in the key and over the chord that sounds with it. */
  static List<SpelledPitch> of(Saying saying, Adaptation choice, Optional<Key> key) {
    return choice.placedAt(saying.startBeat()).stream()
        .map(note -> named(note, chordUnder(saying, note), key))
        .toList();
  }

  private static SpelledPitch named(Note note, Harmony chord, Optional<Key> key) {
    return SpelledPitch.of(note.pitch(), ToneName.name(note.pitch(), chord, key));
  }

  /** Of a pick-up it is the chord to come. */
  private static Harmony chordUnder(Saying saying, Note note) {
    Harmony chord = saying.chords().get(0).harmony();
    for (ChordSpan span : saying.chords()) {
      if (span.startBeat() <= note.onsetBeats()) {
        chord = span.harmony();
      }
    }
    return chord;
  }
}
