package holdfast.window;

import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.Letter;
import holdfast.theory.NoteName;
import holdfast.theory.OptionalChord;
import java.util.Optional;

/**
 * How notes are named where the player grew up. German calls B natural H and B flat B; the Romance
 * languages sing fixed do, re, mi (common practice, no source).
 */
public enum NoteNaming {
  ENGLISH,
  GERMAN,
  SOLFEGE;

  /** A note's name for people. */
  public String name(NoteName note) {
    return switch (this) {
      case ENGLISH -> note.display();
      case GERMAN -> german(note);
      case SOLFEGE -> syllable(note.letter()) + note.display().substring(1);
    };
  }

  /** A chord for people: its root and bass renamed, its kind as everywhere. */
  public String chord(Harmony harmony) {
    if (this == ENGLISH || harmony.chord().isEmpty()) {
      return harmony.display();
    }
    ChordSymbol chord = harmony.chord().orElseThrow();
    String shown = chord.display();
    String bass = chord.bass().map(NoteName::display).orElse("");
    int end = shown.length() - (bass.isEmpty() ? 0 : bass.length() + 1);
    String renamed =
        name(chord.root())
            + shown.substring(chord.root().display().length(), end)
            + chord.bass().map(b -> "/" + name(b)).orElse("");
    return harmony instanceof OptionalChord ? "(" + renamed + ")" : renamed;
  }

  /** A key for people. */
  public String key(Key key) {
    return name(key.tonic()) + key.display().substring(key.tonic().display().length());
  }

  /** A sounding pitch as the key spells it, without its octave. */
  public String pitch(int pitch, Optional<Key> key) {
    int pitchClass = Math.floorMod(pitch, 12);
    NoteName spelled =
        key.map(k -> k.spell(pitchClass)).orElseGet(() -> NoteName.parse(WITHOUT_KEY[pitchClass]));
    return name(spelled);
  }

  private static final String[] WITHOUT_KEY = {
    "C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"
  };

  private static String german(NoteName note) {
    if (note.letter() != Letter.B) {
      return note.display();
    }
    return note.alter() == -1 ? "B" : "H" + note.display().substring(1);
  }

  private static String syllable(Letter letter) {
    return switch (letter) {
      case C -> "Do";
      case D -> "Re";
      case E -> "Mi";
      case F -> "Fa";
      case G -> "Sol";
      case A -> "La";
      case B -> "Si";
    };
  }
}
