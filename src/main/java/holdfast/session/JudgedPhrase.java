package holdfast.session;

import holdfast.chart.ChordSpan;
import holdfast.harmony.JudgedLine;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.motif.Expectation;
import holdfast.motif.Family;
import holdfast.motif.Verdict;
import java.util.List;
import java.util.Optional;

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
 * @param expectation what a listener expected here, from the idea and the phrases before, and how
 *     near the player came to it; empty where the idea itself is stated
 * @param decidedSeconds when it was known to have ended, in seconds of the take
 * @param overruled the teacher's word, where there is one; then {@code verdict} is the teacher's
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
    Optional<Expectation> expectation,
    double decidedSeconds,
    Optional<Overruled> overruled) {

  /**
   * A verdict that no longer counts, and the word that took its place.
   *
   * @param by what the teacher said
   * @param heard what the coach had heard
   */
  public record Overruled(Overruling by, Verdict heard) {}

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

  /** A phrase as the coach heard it. */
  public JudgedPhrase(
      int index,
      boolean statesTheIdea,
      Place place,
      List<PlayedNote> played,
      List<Note> notes,
      List<ChordSpan> chords,
      Verdict verdict,
      JudgedLine harmony,
      List<String> why,
      Optional<Expectation> expectation,
      double decidedSeconds) {
    this(
        index,
        statesTheIdea,
        place,
        played,
        notes,
        chords,
        verdict,
        harmony,
        why,
        expectation,
        decidedSeconds,
        Optional.empty());
  }

  /** The same phrase under the teacher's word. */
  JudgedPhrase overruledBy(Overruling ruling) {
    Verdict heard = heard();
    return new JudgedPhrase(
        index,
        statesTheIdea,
        place,
        played,
        notes,
        chords,
        ruling.in(heard),
        harmony,
        why,
        expectation,
        decidedSeconds,
        Optional.of(new Overruled(ruling, heard)));
  }

  /** What the coach heard, whatever the teacher says. */
  public Verdict heard() {
    return overruled.map(Overruled::heard).orElse(verdict);
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
