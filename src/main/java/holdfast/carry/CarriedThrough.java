package holdfast.carry;

import holdfast.chart.Changes;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An idea carried through a whole form, once round: at each place the idea as it could go there,
 * every saying following from the one before it.
 *
 * @param idea the idea, with the chord that it was said over first
 * @param sayings in order; at least one
 */
public record CarriedThrough(Statement idea, List<Saying> sayings) {

  /** Copies the sayings. */
  public CarriedThrough {
    sayings = List.copyOf(sayings);
  }

  /**
   * Carries an idea through one chorus.
   *
   * @param idea the idea; where nobody knows its chord, it is the first one that it meets
   * @param form the form
   * @param changes the chords of the form in time
   * @param preferred which choice the line goes on from, counted from 1, where there are so many
   * @throws IllegalArgumentException where the idea does not fit into the form, or is more than a
   *     bar ahead of it
   */
  public static CarriedThrough of(
      Statement idea, Form form, Changes changes, PitchRange range, Habit habit, int preferred) {
    double pickUp = Places.pickUpBeats(idea);
    if (pickUp > form.metre().beats()) {
      throw new IllegalArgumentException(
          "the idea's pick-up is longer than a bar; put its bar line further left");
    }
    List<Double> places = Places.of(form, idea);
    if (places.isEmpty()) {
      throw new IllegalArgumentException("the idea finds no room over its chords; make it shorter");
    }
    Harmony first = changes.at(places.get(0)).harmony();
    Statement known = new Statement(idea.notes(), idea.harmony().or(() -> Optional.of(first)));
    List<Saying> sayings = new ArrayList<>();
    Statement previous = known;
    for (int i = 0; i < places.size(); i++) {
      double start = places.get(i);
      double end = i + 1 < places.size() ? places.get(i + 1) - pickUp : form.lengthBeats();
      Question question =
          new Question(known, previous, changes, start, form.metre(), range, habit).endingBy(end);
      Statement fitted = question.idea();
      List<Adaptation> choices = Carrying.choices(question);
      if (i == 0 && choices.get(0).way() == Way.LITERAL) {
        // The idea as it is has to be said once before it can go anywhere.
        choices = choices.subList(0, 1);
      }
      int taken = Math.min(preferred, choices.size()) - 1;
      sayings.add(
          new Saying(
              start,
              form.barAt(start).number(),
              chordsUnder(changes, start, start + fitted.endBeats()),
              choices,
              taken,
              fitted.endBeats() < known.endBeats()));
      previous =
          new Statement(choices.get(taken).notes(), Optional.of(changes.at(start).harmony()));
    }
    return new CarriedThrough(known, sayings);
  }

  /** The whole line, in beats of the form; a pick-up to its first bar is before 0. */
  public List<Note> line() {
    return sayings.stream().flatMap(saying -> saying.line().stream()).toList();
  }

  private static List<ChordSpan> chordsUnder(Changes changes, double start, double end) {
    List<ChordSpan> chords = new ArrayList<>();
    for (ChordSpan span : changes.between(start, end)) {
      int last = chords.size() - 1;
      if (last < 0 || !chords.get(last).harmony().equals(span.harmony())) {
        chords.add(span);
      }
    }
    return chords;
  }
}
