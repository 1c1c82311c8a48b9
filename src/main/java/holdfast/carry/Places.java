package holdfast.carry;

import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.harmony.Beats;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;

/**
 * Where in a form an idea is said: with each chord anew, from the bar line (or, where the chord is
 * long enough from there, from the middle of the bar), so that its strong notes stay strong. Chords
 * that are too short for it are passed in one saying. Over a chord that goes on it is said again
 * after two bars: one to say it, one to breathe.
 */
public final class Places {

  /** A saying and a breath, in bars. */
  private static final int BARS_OF_A_SAYING_AND_A_BREATH = 2;

  /** The last note may end early where the next saying begins, but is never shorter than this. */
  private static final double SHORTEST_LAST_QUARTERS = 0.5;

  /** What is left over when beats are added up. */
  private static final double ROUNDING_BEATS = 1e-6;

  private final Form form;
  private final Beats beats;
  private final double needBeats;

  private Places(Form form, Statement idea) {
    this.form = form;
    this.beats = new Beats(form.metre());
    Note last = idea.notes().get(idea.size() - 1);
    double leastLast = Math.min(last.durationBeats(), beats.beats(SHORTEST_LAST_QUARTERS));
    this.needBeats = last.onsetBeats() + leastLast + pickUpBeats(idea);
  }

  /** The beats on which the idea's bar starts, in order; none where the form is too short. */
  public static List<Double> of(Form form, Statement idea) {
    return new Places(form, idea).places();
  }

  /** How many beats the idea starts before its bar. */
  public static double pickUpBeats(Statement idea) {
    return Math.max(0, -idea.notes().get(0).onsetBeats());
  }

  private List<Double> places() {
    List<Double> places = new ArrayList<>();
    double free = 0;
    for (ChordSpan chord : chords()) {
      double again = BARS_OF_A_SAYING_AND_A_BREATH * (double) form.metre().beats();
      double from = Math.max(chord.startBeat(), free);
      double place = place(chord, from);
      while (place < chord.endBeat() - ROUNDING_BEATS
          && place + needBeats <= form.lengthBeats() + ROUNDING_BEATS
          && chord.harmony().hasChord()) {
        places.add(place);
        free = place + needBeats;
        place = upToBarLine(Math.max(free, place + again));
        if (place + needBeats > chord.endBeat() + ROUNDING_BEATS) {
          break;
        }
      }
    }
    return places;
  }

  private double place(ChordSpan chord, double from) {
    double line = upToBarLine(from);
    double half = form.metre().beats() / 2.0;
    double middle = line - half;
    boolean strong = beats.place(middle) == Beats.Place.MID_BAR;
    boolean longEnough = middle + needBeats <= chord.endBeat() + ROUNDING_BEATS;
    return strong && middle >= from - ROUNDING_BEATS && longEnough ? middle : line;
  }

  private double upToBarLine(double beat) {
    Metre metre = form.metre();
    // Adding 0 makes a zero of a zero below zero.
    return Math.ceil(beat / metre.beats() - ROUNDING_BEATS) * metre.beats() + 0.0;
  }

  /** The chords of one chorus; a chord that is struck again goes on. */
  private List<ChordSpan> chords() {
    List<ChordSpan> chords = new ArrayList<>();
    for (ChordSpan span : form.changes()) {
      int last = chords.size() - 1;
      if (span.startBeat() < 0) {
        continue;
      }
      if (last >= 0 && chords.get(last).harmony().equals(span.harmony())) {
        ChordSpan before = chords.remove(last);
        chords.add(
            new ChordSpan(
                before.startBeat(),
                span.endBeat() - before.startBeat(),
                before.harmony(),
                before.bar()));
      } else {
        chords.add(span);
      }
    }
    return chords;
  }
}
