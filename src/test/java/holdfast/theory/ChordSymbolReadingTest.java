package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The traps of chord symbols: common practice and a trade table, no published source. */
class ChordSymbolReadingTest {

  private static String read(String symbol) {
    return Harmony.parse(symbol).text();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "Bb7;Bb7",
        "A-7;Am7",
        "C7-9;C7b9",
        "C-9;Cm9",
        "C6/9;C6/9",
        "Am(maj7);Am(maj7)",
        "cm7;Cm7",
        "Csus;Csus4",
        "C4;Csus4",
        "C2;Csus2",
        "Co;C°",
        "C0;C°",
        "Cø;Cm7b5",
        "C7(b9,#5);C7(#5,b9)",
        "C7(♯9);C7#9",
        "C7(♭9);C7b9",
        "C7(♮9);C9",
        "C△;Cmaj7",
        "CΔ;Cmaj7",
        "C°;C°",
        "Bbb7;Bbb7",
        "E+;E+",
        "F#/A#;F#/A#",
        "F♯/A♯;F#/A#",
        "N.C.;N.C.",
        "NC;N.C.",
        "N;N.C.",
        "(no chord);N.C.",
        "(E7);(E7)",
        "X;X"
      })
  void a_trap_is_read_as_musicians_mean_it(String symbol, String meaning) {
    assertEquals(meaning, read(symbol));
  }

  @Test
  void capital_and_small_m_are_different_chords() {
    assertNotEquals(Harmony.parse("CM7"), Harmony.parse("Cm7"));
    assertEquals("Cmaj7", read("CM7"));
    assertEquals("Cmaj7", read("CMAJ7"));
    assertEquals("Cm7", read("CMin7"));
  }

  @Test
  void b_flat_seven_is_never_b_with_a_flat_seven() {
    ChordSymbol chord = ChordSymbol.parse("Bb7");
    assertEquals(new NoteName(Letter.B, -1), chord.root());
    assertEquals(PitchClassSet.of(10, 2, 5, 8), chord.pitchClasses());
  }

  @Test
  void the_slash_of_six_nine_is_no_bass() {
    assertEquals(Optional.empty(), ChordSymbol.parse("C6/9").bass());
    assertEquals(Optional.of(NoteName.parse("E")), ChordSymbol.parse("C6/9/E").bass());
  }

  @Test
  void german_letters_are_read_only_where_they_are_asked_for() {
    assertEquals("B7", Harmony.parse("H7", LetterNames.GERMAN).text());
    assertEquals("Bb", Harmony.parse("B", LetterNames.GERMAN).text());
    assertEquals("Bb7", Harmony.parse("Bb7", LetterNames.GERMAN).text());
    assertEquals("G/B", Harmony.parse("G/H", LetterNames.GERMAN).text());
    assertEquals("B", read("B"));
    assertThrows(UnknownChordException.class, () -> Harmony.parse("H7"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "C7(#9,b13);0 3 4 7 8 10",
        "C7b13#9;0 3 4 7 8 10",
        "Cm7(11);0 3 5 7 10",
        "Cmaj9/E;0 2 4 7 11",
        "C7b5b9;0 1 4 6 10",
        "C7sus4(13);0 5 7 9 10",
        "Cø7/Gb;0 3 6 10",
        "Cm7b5(11);0 3 5 6 10",
        "C(add11);0 4 5 7",
        "Cmaj7(no3);0 7 11",
        "C13(#9);0 3 4 7 9 10",
        "Cdim(maj7);0 3 6 11",
        "C+7(b9);0 1 4 8 10",
        "C-7(9,11);0 2 3 5 7 10",
        "C69#11;0 2 4 6 7 9",
        "Csus9;0 2 5 7 10",
        "C7(omit5);0 4 10",
        "C7#9(#11);0 3 4 6 7 10",
        "C-Δ9;0 2 3 7 11",
        "C(b5);0 4 6",
        "C-5;0 4 6",
        "C+5;0 4 8",
        "C7 alt;0 1 3 4 6 8 10",
        "C min 7;0 3 7 10",
        "Cmaj13#11;0 2 4 6 7 9 11",
        "Cmadd9;0 2 3 7",
        "Csus2sus4;0 2 5 7",
        "C9(13);0 2 4 7 9 10",
        "C7add13;0 4 7 9 10",
        "C7add9;0 2 4 7 10",
        "Calt;0 1 3 4 6 8 10",
        "C-7b5(b13);0 3 6 8 10"
      })
  void a_symbol_that_no_table_holds_is_understood_by_its_parts(String symbol, String sounding) {
    assertEquals(Reference.pitchClasses(sounding), Harmony.parse(symbol).pitchClasses());
    assertEquals(Harmony.parse(symbol), Harmony.parse(read(symbol)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "C/9", "%", "%%", "/", "H7", "Cmja7", "C7b4711", "Cm7/", "Dm7 G7", "C(", "C)7", "Q",
        "Bbmin77", "C7b", "dim7", "C7/9", "C~", "Cm7b5b", "♭7"
      })
  void a_text_that_is_no_chord_is_refused(String symbol) {
    UnknownChordException refusal =
        assertThrows(UnknownChordException.class, () -> Harmony.parse(symbol));
    assertEquals(symbol.strip(), refusal.symbol());
    assertTrue(refusal.nearest().size() <= 3);
    refusal.nearest().forEach(near -> assertEquals(near, read(near)));
  }

  @Test
  void a_refusal_names_the_nearest_symbols_on_the_same_root() {
    assertEquals("Cmaj7", nearest("Cmja7").get(0));
    assertEquals("G7alt", nearest("G7atl").get(0));
    assertEquals("Ebm7b5", nearest("Ebm7b55").get(0));
    assertEquals("F#7sus4", nearest("F#7suss4").get(0));
    assertEquals("B7", nearest("H7").get(0));
    assertEquals(List.of(), nearest("%"));
    assertEquals(
        "“Cmja7” is not a chord symbol that Holdfast knows; near it are "
            + String.join(", ", nearest("Cmja7")),
        assertThrows(UnknownChordException.class, () -> Harmony.parse("Cmja7")).getMessage());
  }

  @Test
  void a_refusal_keeps_the_bass_and_the_letters_of_its_reader() {
    assertEquals("Cmaj7/G", nearest("Cmja7/G").get(0));
    assertEquals(
        "H7alt",
        assertThrows(UnknownChordException.class, () -> Harmony.parse("H7atl", LetterNames.GERMAN))
            .nearest()
            .get(0));
  }

  @Test
  void a_long_text_is_shown_by_its_beginning() {
    String message =
        assertThrows(UnknownChordException.class, () -> Harmony.parse("C".repeat(100_000)))
            .getMessage();
    assertTrue(message.length() < 120, message);
  }

  private static List<String> nearest(String symbol) {
    return assertThrows(UnknownChordException.class, () -> Harmony.parse(symbol)).nearest();
  }

  @ParameterizedTest
  @CsvSource({
    "C2,Csus2,Cadd9",
    "C-9,Cm9,C7b9",
    "C°,C°,C°7",
    "Cdim,C°,C°7",
    "C7+,C7#5,Cmaj7",
    "CΔ,Cmaj7,C",
    "G+9,G9#5,G7#9",
    "C4,Csus4,C(add11)"
  })
  void an_ambiguous_symbol_tells_its_other_reading(String symbol, String taken, String other) {
    Ambiguity ambiguity = Ambiguity.of(symbol).orElseThrow();
    assertEquals(taken, ambiguity.taken().text());
    assertEquals(other, ambiguity.other().text());
    assertEquals(taken, read(symbol));
  }

  @ParameterizedTest
  @ValueSource(strings = {"C", "Cm7", "Bb7", "C7b9", "F#m7b5", "N.C.", "Cmja7"})
  void a_plain_symbol_is_not_ambiguous(String symbol) {
    assertEquals(Optional.empty(), Ambiguity.of(symbol));
  }

  @Test
  void an_optional_chord_has_the_notes_of_its_chord() {
    Harmony harmony = Harmony.parse("(E7)");
    assertEquals(PitchClassSet.of(2, 4, 8, 11), harmony.pitchClasses());
    assertEquals(new OptionalChord(ChordSymbol.parse("E7")), harmony);
  }

  @Test
  void no_chord_has_no_notes_to_judge_by() {
    assertEquals(NoChord.SILENT, Harmony.parse("N.C."));
    assertEquals(PitchClassSet.EMPTY, Harmony.parse("N.C.").pitchClasses());
    assertEquals(NoChord.UNKNOWN, Harmony.parse("X"));
  }

  @ParameterizedTest
  @CsvSource({
    "C7,4 10",
    "Cmaj7,4 11",
    "Cm7,3 10",
    "C6,4 9",
    "Cm6,3 9",
    "C7sus4,5 10",
    "C°7,3 6",
    "Cm7b5,3 10",
    "C7alt,4 10",
    "C,4",
    "Db7,5 11"
  })
  void guide_tones_are_third_and_seventh_or_what_stands_for_them(String symbol, String tones) {
    assertEquals(Reference.pitchClasses(tones), Harmony.parse(symbol).guideTones());
  }
}
