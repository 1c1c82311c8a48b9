package holdfast.harmony;

import java.util.List;
import java.util.Optional;

/**
 * A line of notes as it stands in its chords.
 *
 * @param notes every note, in order
 * @param fit how well the whole sits; empty where no chord sounds under any of it
 */
public record JudgedLine(List<HeardNote> notes, Optional<Fit> fit) {

  /** Copies the list. */
  public JudgedLine {
    notes = List.copyOf(notes);
  }

  /** The roles in words, in order. */
  public List<String> roleTexts() {
    return notes.stream().map(n -> n.role().text()).toList();
  }
}
