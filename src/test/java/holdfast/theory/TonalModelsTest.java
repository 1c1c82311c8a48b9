package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Keys, roots and distances against the numbers of those who found the rules. */
class TonalModelsTest {

  static Stream<Map<String, String>> keyEstimates() {
    return Reference.rows("key-estimates.csv", ';').stream();
  }

  static Stream<Map<String, String>> distances() {
    return Reference.rows("tonal-pitch-space.csv", ',').stream();
  }

  @ParameterizedTest
  @MethodSource("keyEstimates")
  void the_two_likeliest_keys_are_those_that_music21_finds(Map<String, String> row) {
    List<Double> weights =
        Reference.words(row.get("weights")).stream().map(Double::valueOf).toList();
    List<KeyFinder.Estimate> ranked =
        new KeyFinder(KeyProfile.named(row.get("profile"))).rank(weights);

    assertSame(row.get("key"), row.get("correlation"), ranked.get(0));
    assertSame(row.get("second"), row.get("second correlation"), ranked.get(1));
  }

  private static void assertSame(String key, String correlation, KeyFinder.Estimate estimate) {
    assertEquals(Key.parse(key).tonic().pitchClass(), estimate.key().tonic().pitchClass(), key);
    assertEquals(Key.parse(key).mode(), estimate.key().mode());
    assertEquals(Double.parseDouble(correlation), estimate.correlation(), 0.0005);
  }

  @Test
  void a_profile_speaks_of_its_own_key() {
    for (KeyProfile profile : KeyProfile.known()) {
      KeyFinder finder = new KeyFinder(profile);
      assertEquals(Key.parse("C"), finder.rank(profile.major()).get(0).key(), profile.name());
      assertEquals(Key.parse("Cm"), finder.rank(profile.minor()).get(0).key(), profile.name());
    }
  }

  @Test
  void notes_that_all_sound_alike_speak_of_no_key() {
    assertEquals(List.of(), KeyFinder.KRUMHANSL_KESSLER.rank(Collections.nCopies(12, 1.0)));
  }

  static Stream<Map<String, String>> ambiguities() {
    return Reference.rows("parncutt-1988-table-4.csv", ',').stream();
  }

  @ParameterizedTest
  @MethodSource("ambiguities")
  void the_ear_is_as_unsure_of_a_root_as_table_4_of_1988_says(Map<String, String> row) {
    double ours = RootSupport.PARNCUTT_1988.ambiguity(Reference.pitchClasses(row.get("notes")));
    assertEquals(Double.parseDouble(row.get("ambiguity")), ours, 0.05 + 1e-9, row.get("notes"));
  }

  /** Parncutt 1988 and 2006, as the R package parn88 lists both (MIT). */
  @ParameterizedTest
  @CsvSource({
    "unison, 0, 1.0, 10",
    "fifth, 7, 0.5, 5",
    "major third, 4, 0.333, 3",
    "minor seventh, 10, 0.25, 2",
    "major second, 2, 0.2, 1",
    "minor third, 3, 0.1, 0",
    "minor second, 1, 0, 0",
    "fourth, 5, 0, 0",
    "tritone, 6, 0, 0",
    "minor sixth, 8, 0, 0",
    "major sixth, 9, 0, 0",
    "major seventh, 11, 0, 0"
  })
  void a_note_supports_the_root_below_it_as_much_as_parncutt_says(
      String interval, int semitones, double in1988, double in2006) {
    PitchClassSet above = PitchClassSet.of(semitones);
    assertEquals(in1988, RootSupport.PARNCUTT_1988.weights(above).get(0), 0.0005, interval);
    assertEquals(in2006, RootSupport.PARNCUTT_2006.weights(above).get(0), 0, interval);
  }

  @ParameterizedTest
  @CsvSource({"0 4 7, 1.870829", "0 3 7, 2.04939", "0 4 8, 2.201398", "0 3 6, 2.50998"})
  void the_weights_of_2006_leave_the_root_as_unsure_as_the_worked_examples(
      String notes, double ambiguity) {
    // The README of the R package parn88 prints them (MIT).
    assertEquals(
        ambiguity, RootSupport.PARNCUTT_2006.ambiguity(Reference.pitchClasses(notes)), 1e-6);
  }

  @Test
  void the_root_weights_of_a_c_major_triad_are_those_of_the_worked_example() {
    // Parncutt's weights of 2006 on C E G, as the README of the R package parn88 prints them (MIT).
    assertEquals(
        List.of(18.0, 0.0, 3.0, 3.0, 10.0, 6.0, 2.0, 10.0, 3.0, 7.0, 1.0, 0.0),
        RootSupport.PARNCUTT_2006.weights(PitchClassSet.of(0, 4, 7)));
  }

  @ParameterizedTest
  @CsvSource({"C", "Cm", "C7", "Cmaj7", "C9", "Eb7", "Am", "F#m"})
  void the_ear_takes_the_written_root_for_the_root(String symbol) {
    // Music theory's own roots, with which Parncutt compares his model.
    ChordSymbol chord = ChordSymbol.parse(symbol);
    assertEquals(chord.root().pitchClass(), RootSupport.PARNCUTT_1988.root(chord.pitchClasses()));
  }

  @ParameterizedTest
  @MethodSource("distances")
  void the_way_from_chord_to_chord_is_as_far_as_lerdahl_counts(Map<String, String> row) {
    TonalPitchSpace way =
        TonalPitchSpace.between(
            ChordSymbol.parse(row.get("from")),
            Key.parse(row.get("from key")),
            ChordSymbol.parse(row.get("to")),
            Key.parse(row.get("to key")));
    assertEquals(row.get("i"), String.valueOf(way.keySteps()));
    assertEquals(row.get("j"), String.valueOf(way.rootSteps()));
    assertEquals(row.get("k"), String.valueOf(way.newNotes()));
    assertEquals(row.get("distance"), String.valueOf(way.distance()));
  }

  @ParameterizedTest
  @CsvSource({"C, C", "Am, Am", "F#m7, A", "E7, Am"})
  void a_chord_is_no_distance_from_itself(String symbol, String key) {
    ChordSymbol chord = ChordSymbol.parse(symbol);
    assertEquals(
        0, TonalPitchSpace.between(chord, Key.parse(key), chord, Key.parse(key)).distance());
  }
}
