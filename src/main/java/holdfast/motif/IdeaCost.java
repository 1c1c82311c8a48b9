package holdfast.motif;

import holdfast.melody.Note;
import holdfast.phrase.SegmentCost;
import java.util.List;

/**
 * What it costs to take some notes of a take for one phrase, for one who knows the idea and the
 * chords: ln p(new material | notes), which is near 0 for notes that have nothing to do with the
 * idea, and far below for a good restatement. Cuts and treatments are so found together.
 *
 * <p>A run is heard as one thing: a scale that goes on without a rest is less what its halves gain
 * as small ideas that fall or rise than what it gains as one run. So what a stretch without a rest
 * is more likely as a run than as a melody is taken off.
 */
public final class IdeaCost implements SegmentCost {

  /** No restatement is told from fewer notes. */
  private static final int FEWEST_NOTES = 3;

  /** A statement of the idea may be longer by so many notes at most, and shorter by as many. */
  private static final int MORE_OR_LESS = 3;

  /** A silence longer than this part of the note before it ends a run. */
  private static final double REST = 0.5;

  private static final List<Material> RUNS =
      List.of(
          Material.SCALE_RUN, Material.ARPEGGIO, Material.REPEATED_NOTE, Material.CHROMATIC_LINE);

  private final MotifJudge judge;
  private final Motif idea;
  private final List<Note> notes;
  private final Context context;

  /** By kind of run and note: what the note gains by going on with it. */
  private final double[][] gains;

  /**
   * @param notes of the whole take, in beats, in order of onset
   */
  public IdeaCost(MotifJudge judge, Motif idea, List<Note> notes, Context context) {
    this.judge = judge;
    this.idea = idea;
    this.notes = List.copyOf(notes);
    this.context = context;
    this.gains = new double[RUNS.size()][this.notes.size()];
    if (!this.notes.isEmpty()) {
      Background background = judge.background(idea, this.notes, context);
      for (int kind = 0; kind < gains.length; kind++) {
        for (int i = 1; i < this.notes.size(); i++) {
          gains[kind][i] = background.gain(RUNS.get(kind), i);
        }
      }
    }
  }

  @Override
  public double of(int from, int to) {
    int size = to - from;
    double run = runs(from, to);
    if (size < FEWEST_NOTES || Math.abs(size - idea.notes().size()) > MORE_OR_LESS) {
      return -run;
    }
    return judge.logNew(idea, notes.subList(from, to), context) - run;
  }

  /** ln of how much likelier the notes are as runs than as a melody, 0 or more. */
  private double runs(int from, int to) {
    double all = 0;
    int start = from;
    for (int i = from + 1; i <= to; i++) {
      if (i == to || rests(i)) {
        all += run(start, i);
        start = i;
      }
    }
    return all;
  }

  private boolean rests(int i) {
    Note before = notes.get(i - 1);
    return notes.get(i).onsetBeats() - before.endBeats() > REST * before.durationBeats();
  }

  private double run(int from, int to) {
    double most = 0;
    for (int kind = 0; kind < gains.length; kind++) {
      double gain = Background.rarer(RUNS.get(kind));
      for (int i = from + 1; i < to; i++) {
        gain += gains[kind][i];
      }
      most = Math.max(most, gain);
    }
    return most;
  }
}
