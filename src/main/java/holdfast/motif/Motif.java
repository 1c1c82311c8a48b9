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
 * @param hearings how many statements it is known from: 1 after its first, with all that player's
 *     own errors in it; 0 where it is written, and so exact
 */
public record Motif(List<Note> notes, Optional<Harmony> chord, int hearings) {

  /** Copies the notes and checks that there are some, in order. */
  public Motif {
    notes = List.copyOf(notes);
    Phrases.check("an idea", notes);
    if (hearings < 0) {
      throw new IllegalArgumentException("an idea is heard 0 times or more, not " + hearings);
    }
  }

  /** An idea that is written. */
  public Motif(List<Note> notes, Optional<Harmony> chord) {
    this(notes, chord, 0);
  }

  /** An idea over a chord that nobody told. */
  public static Motif of(List<Note> notes) {
    return new Motif(notes, Optional.empty());
  }

  /** An idea over a chord. */
  public static Motif over(Harmony chord, List<Note> notes) {
    return new Motif(notes, Optional.of(chord));
  }

  /** The same, known from so many statements. */
  public Motif heard(int times) {
    return new Motif(notes, chord, times);
  }

  /**
   * The variance of a pitch that is heard against this idea, over that of one against what is
   * written: 2 where the idea itself was heard once, nearly 1 after many statements.
   */
  double spreading() {
    return hearings == 0 ? 1 : 1 + 1.0 / hearings;
  }
}
