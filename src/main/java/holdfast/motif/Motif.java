package holdfast.motif;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;

/**
 * The small idea that a player sets out with and carries through the tune.
 *
 * @param notes its notes in order of onset, at least one
 * @param chord the chord it was first played over, where that is known
 */
public record Motif(List<Note> notes, Optional<Harmony> chord) {

  /** Copies the notes and checks that there are some, in order. */
  public Motif {
    notes = List.copyOf(notes);
    Phrases.check("an idea", notes);
  }

  /** An idea over a chord that nobody told. */
  public static Motif of(List<Note> notes) {
    return new Motif(notes, Optional.empty());
  }

  /** An idea over a chord. */
  public static Motif over(Harmony chord, List<Note> notes) {
    return new Motif(notes, Optional.of(chord));
  }
}
