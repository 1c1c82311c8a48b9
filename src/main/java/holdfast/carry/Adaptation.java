package holdfast.carry;

import holdfast.melody.Note;
import java.util.List;

/**
 * One answer to "and over this chord?"
 *
 * @param notes the idea as it could go, in beats from the start of its bar, rhythm unchanged
 * @param way how it got there
 * @param cost how far it had to go; lower is nearer to the idea and to what rests over the chord
 * @param reasons why, in sentences for the player; at least one
 */
public record Adaptation(List<Note> notes, Way way, double cost, List<String> reasons) {

  /** Copies the lists. */
  public Adaptation {
    notes = List.copyOf(notes);
    reasons = List.copyOf(reasons);
  }

  /** The notes where they are said in the tune. */
  public List<Note> placedAt(double startBeat) {
    return notes.stream()
        .map(n -> new Note(n.onsetBeats() + startBeat, n.durationBeats(), n.pitch()))
        .toList();
  }

  /** The reasons as one text. */
  public String why() {
    return String.join(" ", reasons);
  }
}
