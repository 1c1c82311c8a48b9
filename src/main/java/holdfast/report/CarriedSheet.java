package holdfast.report;

import holdfast.carry.CarriedThrough;
import holdfast.carry.Saying;
import holdfast.chart.Chart;
import holdfast.chart.MelodySheet;
import holdfast.melody.Note;
import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.List;

/** An idea carried through a form, as a lead sheet: the line, its chords, and how it got there. */
public final class CarriedSheet {

  private CarriedSheet() {}

  /**
   * The line that is taken, with the way of each saying over it.
   *
   * @param chart the tune, in the key that sounds
   * @param tempo beats a minute
   */
  public static MelodySheet of(CarriedThrough carried, Chart chart, double tempo) {
    List<MelodySheet.NamedNote> notes = new ArrayList<>();
    List<MelodySheet.Words> words = new ArrayList<>();
    for (Saying saying : carried.sayings()) {
      List<Note> line = saying.line();
      List<SpelledPitch> names =
          SayingNames.of(saying, saying.choices().get(saying.taken()), chart.key());
      for (int i = 0; i < line.size(); i++) {
        notes.add(new MelodySheet.NamedNote(line.get(i), names.get(i).name()));
      }
      words.add(
          new MelodySheet.Words(
              saying.startBeat(), saying.choices().get(saying.taken()).way().text()));
    }
    return new MelodySheet(chart.title(), chart.form(), chart.key(), tempo, notes, words);
  }
}
