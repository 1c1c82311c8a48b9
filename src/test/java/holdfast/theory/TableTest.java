package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reader of the tables, and the small names that come out of them. */
class TableTest {

  @Test
  void cells_are_split_at_commas_outside_quotes() {
    List<Table.Row> rows = Table.named("made-table.csv").rows();
    assertEquals(2, rows.size());
    assertEquals("one, with a comma", rows.get(0).get("name"));
    assertEquals("two \"quoted\"", rows.get(1).get("name"));
    assertEquals("z", rows.get(1).get("parts"));
  }

  @Test
  void words_and_parts_of_a_cell_come_in_order() {
    List<Table.Row> rows = Table.named("made-table.csv").rows();
    assertEquals(List.of("a", "b", "c"), rows.get(0).words("words"));
    assertEquals(List.of("x", "y"), rows.get(0).parts("parts"));
    assertEquals(List.of(), rows.get(1).words("words"));
  }

  @Test
  void what_is_wrong_with_a_table_is_said_with_its_line() {
    assertEquals(
        "made-short.csv, line 3: 1 cells instead of 2",
        assertThrows(IllegalStateException.class, () -> Table.named("made-short.csv"))
            .getMessage());
    assertEquals(
        "made-empty.csv is empty",
        assertThrows(IllegalStateException.class, () -> Table.named("made-empty.csv"))
            .getMessage());
    assertThrows(IllegalStateException.class, () -> Table.named("made-nowhere.csv"));
    Table.Row row = Table.named("made-table.csv").rows().get(0);
    assertThrows(IllegalStateException.class, () -> row.get("nothing"));
  }

  /** Common practice: counted against the major scale of the tonic. */
  @ParameterizedTest
  @CsvSource({
    "I, 0",
    "bII, 1",
    "II, 2",
    "bIII, 3",
    "#IV, 6",
    "V, 7",
    "bVII, 10",
    "VII, 11",
    "bI, 11"
  })
  void a_roman_numeral_is_so_many_semitones_above_the_tonic(String text, int semitones) {
    assertEquals(semitones, RomanNumeral.semitones(text));
  }

  @Test
  void what_is_no_numeral_no_scale_and_no_profile_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> RomanNumeral.semitones("b"));
    assertThrows(IllegalArgumentException.class, () -> Scale.named("Nowhere"));
    assertThrows(IllegalArgumentException.class, () -> KeyProfile.named("nobody"));
    assertThrows(
        IllegalArgumentException.class, () -> new Scale("rootless", PitchClassSet.of(1, 2)));
    List<Double> twelve = java.util.Collections.nCopies(12, 1.0);
    assertThrows(
        IllegalArgumentException.class, () -> new KeyProfile("short", twelve, List.of(1.0)));
    assertThrows(
        IllegalArgumentException.class, () -> new KeyProfile("short", List.of(1.0), twelve));
  }

  @Test
  void a_scale_is_found_by_its_name_and_set_on_a_root() {
    assertEquals("Dorian", Scale.named("Dorian").name());
    assertEquals(Scale.named("Dorian"), Scale.known().get(1));
    assertEquals(
        PitchClassSet.of(2, 4, 5, 7, 9, 11, 0), Scale.named("Dorian").on(NoteName.parse("D")));
    assertEquals("temperley", KeyProfile.named("temperley").name());
  }

  /**
   * Krumhansl and Kessler 1982, probe-tone ratings, as music21 (analysis.discrete) and amads
   * (profiles) print them; the two agree.
   */
  @Test
  void the_key_profile_of_krumhansl_and_kessler_is_theirs() {
    KeyProfile theirs = KeyProfile.named("krumhansl-kessler");
    assertEquals(
        List.of(6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88),
        theirs.major());
    assertEquals(
        List.of(6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17),
        theirs.minor());
  }

  @Test
  void what_people_read_has_the_signs_of_music() {
    assertEquals("♭7", Degree.parse("b7").display());
    assertEquals("♯11", Degree.parse("#11").display());
    assertEquals("5", Degree.parse("5").display());
    assertEquals("E♭", Key.parse("Eb").display());
    assertEquals("Cm", Key.parse("C minor").display());
    assertEquals("Dm (Dorian)", Key.parse("D dorian").text());
    assertEquals("B♭4", SpelledPitch.parse("Bb4").display());
    assertEquals("N.C.", NoChord.SILENT.display());
    assertEquals(NoChord.SILENT, NoChord.SILENT.transpose(new Interval(1, 2), Key.parse("D")));
    assertEquals("(E♭7)", Harmony.parse("(Eb7)").display());
    assertEquals(NoteName.parse("E"), new Spelling(Optional.empty(), NoChord.SILENT).name(64));
  }
}
