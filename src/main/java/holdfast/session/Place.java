package holdfast.session;

import holdfast.chart.Form;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.util.List;

/**
 * Where in the form a phrase stands, as a musician would say it.
 *
 * @param chorus counted from 1
 * @param bar the bar of the form, counted from 1
 */
public record Place(int chorus, int bar) {

  /** A phrase that starts at most this many beats before a bar line may be a pick-up to it. */
  private static final double LONGEST_PICK_UP_BEATS = 1.5;

  /** Onsets this near a bar line, in beats, are meant to be on it: a sixteenth of common time. */
  private static final double ON_THE_LINE_BEATS = 0.26;

  /** The place of a beat where the form is played from bar 1 on, again and again. */
  public static Place at(double beat, Form form) {
    return new Place(form.chorusAt(beat), Math.max(1, form.barAt(beat).number()));
  }

  /**
   * The beat whose bar a phrase belongs to: its first, unless it starts just before a bar line and
   * has most of its time behind it. Then it is a pick-up to the bar that it leads into.
   */
  public static double beatThatPlaces(List<Note> phrase, Metre metre) {
    double start = phrase.get(0).onsetBeats();
    double end = phrase.get(phrase.size() - 1).endBeats();
    int beatsInBar = metre.beats();
    double nextLine = (Math.floor(start / beatsInBar) + 1) * beatsInBar;
    double before = nextLine - start;
    boolean early = before <= ON_THE_LINE_BEATS;
    boolean pickUp = before <= LONGEST_PICK_UP_BEATS && end - nextLine > before;
    return early || pickUp ? nextLine : start;
  }

  /** As in a sentence: {@code bar 6}, or {@code bar 6 of chorus 2}. */
  public String words(int choruses) {
    return choruses > 1 ? "bar " + bar + " of chorus " + chorus : "bar " + bar;
  }
}
