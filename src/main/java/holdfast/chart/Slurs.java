package holdfast.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Where the slurs of a melody begin and end on paper: over each phrase from its first note on. */
final class Slurs {

  /** Which of the notes of which bar. */
  private record Place(int bar, int note) {}

  private final Map<Place, List<String>> types = new HashMap<>();

  private Slurs() {}

  static Slurs of(MelodySheet sheet, List<MelodyBar> bars) {
    Slurs slurs = new Slurs();
    for (MelodySheet.Phrase phrase : sheet.phrases()) {
      List<Place> under = new ArrayList<>();
      for (int bar = 0; bar < bars.size(); bar++) {
        List<MelodyBar.Written> notes = bars.get(bar).notes();
        for (int i = 0; i < notes.size(); i++) {
          if (notes.get(i).note().filter(note -> isUnder(phrase, note)).isPresent()) {
            under.add(new Place(bar, i));
          }
        }
      }
      // A slur over one note says nothing.
      if (under.size() > 1) {
        slurs.add(under.get(0), "start");
        slurs.add(under.get(under.size() - 1), "stop");
      }
    }
    return slurs;
  }

  private static boolean isUnder(MelodySheet.Phrase phrase, MelodySheet.NamedNote note) {
    double onset = note.note().onsetBeats();
    return onset >= phrase.firstOnset() && onset <= phrase.lastOnset();
  }

  private void add(Place place, String type) {
    types.computeIfAbsent(place, p -> new ArrayList<>()).add(type);
  }

  /** What begins or ends at a note, as MusicXML says it. */
  List<String> at(int bar, int note) {
    return types.getOrDefault(new Place(bar, note), List.of());
  }
}
