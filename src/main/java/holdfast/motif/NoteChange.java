package holdfast.motif;

import java.util.OptionalInt;

/**
 * What became of one note of the idea, or where one note of the phrase came from.
 *
 * @param kind what happened
 * @param ideaNote the idea's note, counted from 0; empty for a note that was added
 * @param phraseNote the phrase's note, counted from 0; empty for a note that was dropped
 * @param semitones how far it lies from where the treatment wanted it: up is positive
 */
public record NoteChange(Kind kind, OptionalInt ideaNote, OptionalInt phraseNote, int semitones) {

  /** What may happen to a note. */
  public enum Kind {
    /** Just where the treatment wants it. */
    KEPT,
    /** The idea's note would clash with the new chord; this one fits: the skew that we teach. */
    MOVED_TO_FIT,
    /** Moved by choice: the idea's note would have done as well. */
    MOVED,
    /** Beside the note that was meant, and no better for it. */
    SLIPPED,
    /** A note of the idea that was left out. */
    DROPPED,
    /** A note that the idea does not have. */
    ADDED
  }
}
