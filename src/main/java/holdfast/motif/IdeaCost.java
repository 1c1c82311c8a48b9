package holdfast.motif;

import holdfast.melody.Note;
import holdfast.phrase.SegmentCost;
import java.util.List;

/**
 * What it costs to take some notes of a take for one phrase, for one who knows the idea and the
 * chords: ln p(new material | notes), which is near 0 for notes that have nothing to do with the
 * idea, and far below for a good restatement. Cuts and treatments are so found together.
 */
public final class IdeaCost implements SegmentCost {

  /** No restatement is told from fewer notes. */
  private static final int FEWEST_NOTES = 3;

  /** A statement of the idea may be longer by so many notes at most, and shorter by as many. */
  private static final int MORE_OR_LESS = 3;

  private final MotifJudge judge;
  private final Motif idea;
  private final List<Note> notes;
  private final Context context;

  /**
   * @param notes of the whole take, in beats, in order of onset
   */
  public IdeaCost(MotifJudge judge, Motif idea, List<Note> notes, Context context) {
    this.judge = judge;
    this.idea = idea;
    this.notes = List.copyOf(notes);
    this.context = context;
  }

  @Override
  public double of(int from, int to) {
    int size = to - from;
    if (size < FEWEST_NOTES || Math.abs(size - idea.notes().size()) > MORE_OR_LESS) {
      return 0;
    }
    return judge.logNew(idea, notes.subList(from, to), context);
  }
}
