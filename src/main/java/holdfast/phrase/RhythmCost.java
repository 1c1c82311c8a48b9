package holdfast.phrase;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.List;

/**
 * How well do these notes carry the idea's rhythm and contour? The answer of someone who does not
 * know about chords.
 */
public final class RhythmCost implements SegmentCost {

  private final List<PlayedNote> notes;
  private final TempoMap tempo;
  private final IdeaFollower follower;
  private final double[] pace;
  private int begun = -1;
  private int followed;

  /**
   * Ready to be asked about these notes.
   *
   * @param notes of the whole take, in order of onset
   * @param idea in beats, 2 to 64 notes
   */
  public RhythmCost(List<PlayedNote> notes, TempoMap tempo, List<Note> idea) {
    this.notes = List.copyOf(notes);
    this.tempo = tempo;
    this.follower = new IdeaFollower(idea);
    this.pace = Pace.along(this.notes);
  }

  @Override
  public double of(int from, int to) {
    if (begun != from || followed > to) {
      PlayedNote first = notes.get(from);
      double beat = tempo.beatAt(first.onsetSeconds());
      double beatSeconds = tempo.secondsAt(beat + 1) - tempo.secondsAt(beat);
      follower.begin(first.onsetSeconds(), first.pitch(), beatSeconds);
      begun = from;
      followed = from + 1;
    }
    for (; followed < to; followed++) {
      PlayedNote note = notes.get(followed);
      double previous = notes.get(followed - 1).onsetSeconds();
      follower.next(previous, note.onsetSeconds(), note.pitch(), pace[followed - 1]);
    }
    return -follower.logGainIfOver(notes.get(to - 1).durationSeconds());
  }
}
