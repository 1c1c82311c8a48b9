package holdfast.carry;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * "And over this chord?"
 *
 * @param idea the idea as it was first said
 * @param previous how it was last said; the idea itself where it was said only once
 * @param changes the chords of the tune, with the key where it is known
 * @param startBeat the beat of the tune on which the idea's bar starts
 * @param metre tells which notes are strong
 * @param range what the voice or instrument can reach
 * @param habit how this player carries ideas, as far as it has been heard
 */
public record Question(
    Statement idea,
    Statement previous,
    Changes changes,
    double startBeat,
    Metre metre,
    PitchRange range,
    Habit habit) {

  /** A long way before the tune, where the chord in front of a question's first one stands. */
  private static final double BEFORE = -1000;

  /** Checks that the last statement has the idea's notes, one for one. */
  public Question {
    if (previous.size() != idea.size()) {
      throw new IllegalArgumentException(
          "the last statement has "
              + previous.size()
              + " notes and the idea "
              + idea.size()
              + "; give the idea itself as the last statement");
    }
    if (!Double.isFinite(startBeat)) {
      throw new IllegalArgumentException("an idea starts at a finite beat, not " + startBeat);
    }
  }

  /**
   * The same question with the idea's last note ending by this beat of the tune; the last statement
   * is taken in the rhythm of the idea.
   *
   * @param endBeat behind the onset of the last note
   */
  public Question endingBy(double endBeat) {
    List<Note> notes = new ArrayList<>();
    for (Note note : idea.notes()) {
      double duration = Math.min(note.endBeats(), endBeat - startBeat) - note.onsetBeats();
      notes.add(new Note(note.onsetBeats(), duration, note.pitch()));
    }
    Statement fitted = new Statement(notes, idea.harmony());
    Statement last = fitted.sayingThePitchesOf(previous);
    return new Question(fitted, last, changes, startBeat, metre, range, habit);
  }

  /**
   * The question by itself: from the idea's own chord straight to another, four quarters a bar.
   *
   * @param next what comes after the chord that is asked about, where it is known
   */
  public static Question over(
      Statement idea, Harmony to, Optional<Key> key, Optional<Harmony> next, PitchRange range) {
    TreeMap<Double, Harmony> startingAt = new TreeMap<>();
    idea.harmony().ifPresent(from -> startingAt.put(BEFORE, from));
    startingAt.put(0.0, to);
    next.ifPresent(then -> startingAt.put(Math.max(4, Math.ceil(idea.endBeats() / 4) * 4), then));
    return new Question(
        idea, idea, Changes.through(startingAt, key), 0, Metre.COMMON, range, Habit.UNKNOWN);
  }
}
