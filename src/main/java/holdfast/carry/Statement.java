package holdfast.carry;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
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

  int pitch(int i) {
    return notes.get(i).pitch();
  }

  int size() {
    return notes.size();
  }
}
