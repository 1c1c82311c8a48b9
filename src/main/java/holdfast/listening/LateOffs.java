package holdfast.listening;

import java.util.Arrays;

/**
 * Tells note-offs that come late from those that are meant. When a key is struck again before its
 * first note has ended, the note-off of that first note may still be on its way; taken for the end
 * of the new note, it would cut that short.
 */
public final class LateOffs {

  /**
   * How long after the new stroke the note-off of the one before may come, in seconds. Fingers in
   * legato overlap less (from experience).
   */
  public static final double WITHIN_SECONDS = 0.12;

  private final boolean[] expected = new boolean[128];

  /** This key was struck again while it was down. */
  public void struckAgain(int pitch) {
    expected[pitch] = true;
  }

  /**
   * Whether a note-off belongs to the stroke before the one that sounds.
   *
   * @param sinceOnset seconds since the sounding note began
   */
  public boolean isLate(int pitch, double sinceOnset) {
    boolean late = expected[pitch] && sinceOnset <= WITHIN_SECONDS;
    expected[pitch] = false;
    return late;
  }

  /** Nothing sounds any more. */
  public void forget() {
    Arrays.fill(expected, false);
  }
}
