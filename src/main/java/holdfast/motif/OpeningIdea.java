package holdfast.motif;

import holdfast.melody.Note;
import java.util.List;

/**
 * The small idea at the head of a first phrase. A player who does not breathe says the idea two or
 * three times before the first rest; then the idea is what comes again, and not all of it together.
 */
public final class OpeningIdea {

  /** Up to this many notes a phrase is an idea as it is. */
  private static final int SMALL = 8;

  private static final int SHORTEST = 3;

  /** Two times are the same rhythm within this ratio: human timing at slow tempi. */
  private static final double SAME_RATIO = 1.35;

  /** So much of what comes again must agree. */
  private static final double AGREES = 0.8;

  private OpeningIdea() {}

  /**
   * The idea in a phrase: the shortest head that comes again in rhythm and in its ups and downs, or
   * else the whole phrase.
   */
  public static List<Note> of(List<Note> phrase) {
    if (phrase.size() > SMALL) {
      for (int length = SHORTEST; length <= phrase.size() / 2 && length <= 2 * SMALL; length++) {
        if (comesAgain(phrase, length)) {
          return phrase.subList(0, length);
        }
      }
    }
    return phrase;
  }

  private static boolean comesAgain(List<Note> phrase, int length) {
    int compared = 0;
    int same = 0;
    for (int i = 0; i + length + 1 < phrase.size(); i++) {
      if (i % length == length - 1) {
        continue; // the way from one statement to the next is free
      }
      compared++;
      boolean rhythm = isSame(step(phrase, i), step(phrase, i + length));
      boolean direction = direction(phrase, i) == direction(phrase, i + length);
      same += rhythm && direction ? 1 : 0;
    }
    return compared > 0 && same >= AGREES * compared && hasShape(phrase.subList(0, length));
  }

  /** A run of even notes one way comes again anywhere: that is no idea that comes again. */
  private static boolean hasShape(List<Note> head) {
    for (int i = 1; i + 1 < head.size(); i++) {
      if (direction(head, i) != direction(head, 0) || !isSame(step(head, i), step(head, 0))) {
        return true;
      }
    }
    return false;
  }

  private static double step(List<Note> line, int i) {
    return line.get(i + 1).onsetBeats() - line.get(i).onsetBeats();
  }

  private static int direction(List<Note> line, int i) {
    return Integer.signum(line.get(i + 1).pitch() - line.get(i).pitch());
  }

  private static boolean isSame(double one, double other) {
    return Math.max(one, other) <= SAME_RATIO * Math.min(one, other);
  }
}
