package holdfast.practice;

import holdfast.melody.Note;
import java.util.List;

/**
 * What the coach says in one passage.
 *
 * @param passage where
 * @param notes in beats of the take
 * @param why how it came from what was said before, in plain words
 */
public record CoachLine(Passage passage, List<Note> notes, String why) {

  /** Copies the notes. */
  public CoachLine {
    notes = List.copyOf(notes);
  }
}
