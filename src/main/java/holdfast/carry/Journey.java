package holdfast.carry;

import holdfast.chart.Changes;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The idea carried through a whole form, chord by chord: each statement goes on from the one
 * before.
 *
 * @param stops the chords at which it is said, in order
 */
public record Journey(List<Stop> stops) {

  /** Copies the list. */
  public Journey {
    stops = List.copyOf(stops);
  }

  /**
   * Carries an idea through one chorus. It is said on every new chord that leaves it room: where
   * chords change before the idea is over, the next statement waits for the chord after.
   *
   * @param idea the idea; over no known chord it is taken as said over the form's first
   * @param key the key of the tune, where it is known
   */
  public static Journey through(
      Statement idea, Form form, Optional<Key> key, PitchRange range, Habit habit) {
    Changes changes = new Changes(form.changes(), form.lengthBeats(), key);
    Metre metre = form.metre();
    List<Stop> stops = new ArrayList<>();
    Statement first = at(idea.notes(), idea.harmony().orElse(changes.at(0).harmony()));
    Statement previous = first;
    double free = Double.NEGATIVE_INFINITY;
    for (ChordSpan span : newChords(form)) {
      double start = span.startBeat();
      if (start + idea.notes().get(0).onsetBeats() < free) {
        continue;
      }
      List<Adaptation> choices =
          Carrying.choices(new Question(first, previous, changes, start, metre, range, habit));
      stops.add(new Stop(span.bar(), start, span.harmony(), choices));
      previous = at(choices.get(0).notes(), span.harmony());
      free = start + idea.endBeats();
    }
    return new Journey(stops);
  }

  /** The first choice at every stop, as one melody in beats of the form. */
  public List<Note> melody() {
    return stops.stream()
        .flatMap(stop -> stop.choices().get(0).placedAt(stop.startBeat()).stream())
        .toList();
  }

  private static Statement at(List<Note> notes, Harmony harmony) {
    return new Statement(notes, Optional.of(harmony));
  }

  /** The chords at which something changes; one that is only struck again is no new chord. */
  private static List<ChordSpan> newChords(Form form) {
    List<ChordSpan> spans = new ArrayList<>();
    Optional<Harmony> before = Optional.empty();
    for (ChordSpan span : form.changes()) {
      boolean isNew = !before.equals(Optional.of(span.harmony()));
      if (isNew && span.startBeat() >= 0 && span.harmony().hasChord()) {
        spans.add(span);
      }
      before = Optional.of(span.harmony());
    }
    return spans;
  }
}
