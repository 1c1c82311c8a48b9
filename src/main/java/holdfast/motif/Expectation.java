package holdfast.motif;

import holdfast.melody.Note;
import java.util.List;

/**
 * What a listener expects next, and how near the player came to it.
 *
 * @param way the way that fits best of those a listener could expect
 * @param share how much the listener counted on that way, from what this player did before, 0 to 1
 * @param expected the notes that were expected, in the beats of the phrase, in the idea's rhythm
 * @param nearness how near the played phrase came to what was expected, all ways weighed by their
 *     shares, 0 to 1
 * @param brokeThread whether this is where the thread broke: the phrases before were near, this one
 *     is not
 */
public record Expectation(
    CarryWay way, double share, List<Note> expected, double nearness, boolean brokeThread) {

  /** Copies the notes. */
  public Expectation {
    expected = List.copyOf(expected);
  }
}
