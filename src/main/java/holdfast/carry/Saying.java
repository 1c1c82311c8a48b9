package holdfast.carry;

import holdfast.chart.ChordSpan;
import holdfast.melody.Note;
import java.util.List;

/**
 * One saying of the idea on its way through a form.
 *
 * @param startBeat the beat of the form on which the idea's bar starts
 * @param bar the bar of the form that this is, counted from 1
 * @param chords the chords that it is said over, in order; at least one
 * @param choices how it could go, the nearest first; one or two
 * @param taken which of them the line takes, counted from 0
 * @param heldShorter whether its last note ends sooner than in the idea, to make room for the next
 */
public record Saying(
    double startBeat,
    int bar,
    List<ChordSpan> chords,
    List<Adaptation> choices,
    int taken,
    boolean heldShorter) {

  /** Copies the lists, and checks that there is something to take. */
  public Saying {
    chords = List.copyOf(chords);
    choices = List.copyOf(choices);
    if (chords.isEmpty()) {
      throw new IllegalArgumentException("an idea is said over at least one chord");
    }
    if (taken < 0 || taken >= choices.size()) {
      throw new IllegalArgumentException(
          "the line takes one of " + choices.size() + " choices, not number " + taken);
    }
  }

  /** The notes that the line takes, in beats of the form. */
  public List<Note> line() {
    return choices.get(taken).placedAt(startBeat);
  }
}
