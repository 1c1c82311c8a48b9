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
