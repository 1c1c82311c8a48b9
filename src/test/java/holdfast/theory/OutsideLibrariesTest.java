package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Chords as two libraries of music research understand them: music21 and mir_eval. */
class OutsideLibrariesTest {

  static Stream<Map<String, String>> musicXmlKinds() {
    return Reference.rows("musicxml-kinds.csv", ';').stream();
  }

  static Stream<Map<String, String>> harteLabels() {
    return Reference.rows("harte-labels.csv", ';').stream();
  }

  @ParameterizedTest
  @MethodSource("musicXmlKinds")
  void a_music_xml_kind_with_degrees_has_the_notes_that_music21_gives_it(Map<String, String> row) {
    List<DegreeChange> changes =
        Stream.of(row.get("changes").split(",", -1))
            .filter(change -> !change.isEmpty())
            .map(DegreeChange::parse)
            .toList();
    ChordKind kind = MusicXmlKind.read(row.get("kind"), changes).orElseThrow();
    ChordSymbol chord = new ChordSymbol(NoteName.parse(row.get("root")), kind, Optional.empty());

    assertEquals(Reference.pitchClasses(row.get("pitch classes")), chord.standardPitchClasses());
    assertEquals(chord, Harmony.parse(chord.text()));
    assertEquals(Optional.of(kind), MusicXmlKind.read(kind.musicXmlKind(), kind.musicXmlChanges()));
  }

  @ParameterizedTest
  @MethodSource("harteLabels")
  void a_label_has_the_notes_that_mir_eval_gives_it(Map<String, String> row) {
    Harmony harmony = HarteLabel.parse(row.get("label"));
    if (row.get("root").isEmpty()) {
      assertEquals(NoChord.SILENT, harmony);
      return;
    }
    ChordSymbol chord = harmony.chord().orElseThrow();
    assertEquals(row.get("root"), String.valueOf(chord.root().pitchClass()));
    assertEquals(row.get("bass"), String.valueOf(chord.lowest().pitchClass()));
    assertEquals(
        Reference.pitchClasses(row.get("pitch classes")),
        chord.standardPitchClasses().union(PitchClassSet.of(chord.lowest().pitchClass())));
  }
}
