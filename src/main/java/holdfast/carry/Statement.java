package holdfast.carry;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The idea, said once over a chord.
 *
 * @param notes at least one, in order, in beats from the start of its own bar (a pick-up before 0)
 * @param harmony the chord that it was said over, where it is known
 */
public record Statement(List<Note> notes, Optional<Harmony> harmony) {

  /** Copies the notes. */
  public Statement {
    notes = List.copyOf(notes);
    if (notes.isEmpty()) {
      throw new IllegalArgumentException("a statement has at least one note");
    }
  }

  /** How far it reaches from its bar's start, in beats. */
  public double endBeats() {
    return notes.stream().mapToDouble(Note::endBeats).max().orElseThrow();
  }

  /** Other pitches, one for each note, in the rhythm of this statement and over their own chord. */
  Statement sayingThePitchesOf(Statement other) {
    List<Note> said = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      Note note = notes.get(i);
      said.add(new Note(note.onsetBeats(), note.durationBeats(), other.pitch(i)));
    }
    return new Statement(said, other.harmony());
  }

  int pitch(int i) {
    return notes.get(i).pitch();
  }

  int size() {
    return notes.size();
  }
}
