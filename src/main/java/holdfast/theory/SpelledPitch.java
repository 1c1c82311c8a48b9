package holdfast.theory;

import java.util.Optional;

/**
 * A sounding pitch with its name and octave, as {@code Eb4}; middle C is C4, MIDI note 60. The
 * octave goes with the letter: B#3 sounds as C4, Cb4 as B3.
 *
 * @param name letter and accidental
 * @param octave scientific octave, -1 to 9; the sound must lie on MIDI notes 0 to 127
 */
public record SpelledPitch(NoteName name, int octave) {

  /** Checks that the pitch is a MIDI note. */
  public SpelledPitch {
    int midi = midi(name, octave);
    if (midi < 0 || midi > 127) {
      throw new IllegalArgumentException(
          name.text() + octave + " lies outside the MIDI notes 0 to 127");
    }
  }

  /**
   * Reads {@code Eb4}, {@code F#3}, {@code C-1}.
   *
   * @throws IllegalArgumentException when the text is no pitch
   */
  public static SpelledPitch parse(String text) {
    return read(text)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "“" + text + "” is no pitch; write a note name and its octave, as Eb4"));
  }

  private static Optional<SpelledPitch> read(String text) {
    int end = NoteName.endOf(text);
    if (end == 0 || !text.substring(end).matches("-1|[0-9]")) {
      return Optional.empty();
    }
    int octave = Integer.parseInt(text.substring(end));
    NoteName name = NoteName.head(text, end);
    int midi = midi(name, octave);
    return midi < 0 || midi > 127 ? Optional.empty() : Optional.of(new SpelledPitch(name, octave));
  }

  /** The pitch of a MIDI note under a name that someone chose for its pitch class. */
  public static SpelledPitch of(int midi, NoteName name) {
    if (Math.floorMod(midi, 12) != name.pitchClass()) {
      throw new IllegalArgumentException("MIDI note " + midi + " is no " + name.text());
    }
    int natural = midi - name.alter();
    return new SpelledPitch(name, Math.floorDiv(natural, 12) - 1);
  }

  /** The MIDI note number, C4 = 60. */
  public int midi() {
    return midi(name, octave);
  }

  private static int midi(NoteName name, int octave) {
    return 12 * (octave + 1) + name.letter().pitchClass() + name.alter();
  }

  /** As typed: {@code Eb4}. */
  public String text() {
    return name.text() + octave;
  }

  /** As shown to people: {@code E♭4}. */
  public String display() {
    return name.display() + octave;
  }
}
