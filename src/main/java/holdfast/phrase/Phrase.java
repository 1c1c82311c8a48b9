package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.List;

/**
 * One phrase: notes that belong together as one thought.
 *
 * @param notes in order of onset, at least one
 * @param firstNote how many notes of the take came before it
 * @param ending why it was taken to be over
 * @param decidedSeconds when that was known, in seconds of the take: what was heard up to then was
 *     enough to decide
 */
public record Phrase(List<PlayedNote> notes, int firstNote, Ending ending, double decidedSeconds) {

  /** Copies, and checks that there is a note. */
  public Phrase {
    notes = List.copyOf(notes);
    if (notes.isEmpty()) {
      throw new IllegalArgumentException("a phrase needs at least one note");
    }
    if (firstNote < 0) {
      throw new IllegalArgumentException("notes are counted from 0, not from " + firstNote);
    }
    if (!Double.isFinite(decidedSeconds)) {
      throw new IllegalArgumentException(
          "a phrase is decided at a finite second, not " + decidedSeconds);
    }
  }

  /** When its first note began. */
  public double startSeconds() {
    return notes.get(0).onsetSeconds();
  }

  /** When the last of its notes ended. */
  public double endSeconds() {
    return notes.stream().mapToDouble(PlayedNote::endSeconds).max().orElseThrow();
  }

  /** The index in the take of the first note that is no longer in it. */
  public int endNote() {
    return firstNote + notes.size();
  }
}
