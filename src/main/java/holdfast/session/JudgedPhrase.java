package holdfast.session;

import holdfast.chart.ChordSpan;
import holdfast.harmony.JudgedLine;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.motif.Family;
import holdfast.motif.Verdict;
import java.util.List;

/**
 * One phrase with all that is said about it.
 *
 * @param index counted from 0 through the take
 * @param statesTheIdea whether this is the idea's own first statement, which later phrases are held
 *     against
 * @param place where in the form it stands
 * @param played what the ear heard, in seconds of the take
 * @param notes the same in beats of the take
 * @param chords the chords that sound from its first onset to its last end
 * @param verdict what it makes of the idea
 * @param harmony what each note does over its chord, and how the whole sits
 * @param why the verdict in two or three plain sentences
 * @param decidedSeconds when it was known to have ended, in seconds of the take
 */
public record JudgedPhrase(
    int index,
    boolean statesTheIdea,
    Place place,
    List<PlayedNote> played,
    List<Note> notes,
    List<ChordSpan> chords,
    Verdict verdict,
    JudgedLine harmony,
    List<String> why,
    double decidedSeconds) {

  /** Copies, and checks that both tellings hold the same notes. */
  public JudgedPhrase {
    played = List.copyOf(played);
    notes = List.copyOf(notes);
    chords = List.copyOf(chords);
    why = List.copyOf(why);
    if (notes.isEmpty() || notes.size() != played.size()) {
      throw new IllegalArgumentException(
          "a phrase has at least one note and tells each twice, not "
              + notes.size()
              + " and "
              + played.size());
    }
  }

  /** Its first onset, in beats of the take. */
  public double startBeat() {
    return notes.get(0).onsetBeats();
  }

  /** The end of its last note, in beats of the take. */
  public double endBeat() {
    return notes.get(notes.size() - 1).endBeats();
  }

  /** Its first onset, in seconds of the take. */
  public double startSeconds() {
    return played.get(0).onsetSeconds();
  }

  /** Whether a listener hears the idea in it, restated or varied. */
  public boolean carries() {
    return verdict.family() != Family.NEW;
  }

  /** The chord that it is heard over: the one that fills most of its time. */
  public ChordSpan mainChord() {
    ChordSpan main = chords.get(0);
    double most = -1;
    for (ChordSpan span : chords) {
      double shared = Math.min(endBeat(), span.endBeat()) - Math.max(startBeat(), span.startBeat());
      if (shared > most + 1e-6) {
        most = shared;
        main = span;
      }
    }
    return main;
  }
}
