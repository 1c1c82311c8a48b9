package holdfast.practice;

import holdfast.chart.ChordSpan;
import java.util.List;

/**
 * A stretch of the music that belongs to the coach or to the student.
 *
 * @param who whose it is
 * @param startBeat the bar line or half bar that the idea is said on, in beats of the take
 * @param endBeat where the next passage starts
 * @param chords the chords that sound meanwhile, in order; at least one
 */
public record Passage(Who who, double startBeat, double endBeat, List<ChordSpan> chords) {

  /** Whose turn it is. */
  public enum Who {
    /** The coach says the idea. */
    COACH,
    /** The student does. */
    STUDENT
  }

  /** Copies the chords and checks that there is time. */
  public Passage {
    chords = List.copyOf(chords);
    if (!(endBeat > startBeat) || chords.isEmpty()) {
      throw new IllegalArgumentException(
          "a passage has time and a chord, not " + startBeat + " to " + endBeat + " " + chords);
    }
  }

  /** The chord that it starts over, as a musician reads it. */
  public String chord() {
    return chords.get(0).harmony().display();
  }
}
