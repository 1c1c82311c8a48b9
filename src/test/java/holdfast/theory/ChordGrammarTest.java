package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Chord symbols by their parts, as charts are read (common practice, no source): quality, number,
 * then what is suspended, added, altered or left out.
 */
class ChordGrammarTest {

  private static String degrees(String suffix) {
    return ChordGrammar.degrees(suffix)
        .map(list -> list.stream().sorted().map(Degree::text).collect(Collectors.joining(" ")))
        .orElse("nothing");
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "'', 1 3 5",
    "m, 1 b3 5",
    "-, 1 b3 5",
    "dim, 1 b3 b5",
    "dim7, 1 b3 b5 bb7",
    "ø, 1 b3 b5 b7",
    "ø9, 1 b3 b5 b7 9",
    "ø11, 1 b3 b5 b7 9 11",
    "aug, 1 3 #5",
    "+7, 1 3 #5 b7",
    "Δ, 1 3 5 7",
    "Δ9, 1 3 5 7 9",
    "j7, 1 3 5 7",
    "maj, 1 3 5",
    "maj7, 1 3 5 7",
    "M9, 1 3 5 7 9",
    "7, 1 3 5 b7",
    "9, 1 3 5 b7 9",
    "11, 1 3 5 b7 9 11",
    "13, 1 3 5 b7 9 11 13",
    "mM7, 1 b3 5 7",
    "-Δ9, 1 b3 5 7 9",
    "+maj7, 1 3 #5 7",
    "dimmaj7, 1 b3 b5 7",
    "6, 1 3 5 6",
    "m6, 1 b3 5 6",
    "69, 1 3 5 6 9",
    "m6/9, 1 b3 5 6 9",
    "5, 1 5",
    "-5, 1 3 b5",
    "+5, 1 3 #5",
    "sus, 1 4 5",
    "sus2, 1 2 5",
    "4, 1 4 5",
    "2, 1 2 5",
    "sus24, 1 2 4 5",
    "7sus, 1 4 5 b7",
    "sus13, 1 4 5 b7 9 13",
    "add9, 1 3 5 9",
    "add2, 1 3 5 9",
    "add4, 1 3 5 11",
    "add#11, 1 3 5 #11",
    "7add13, 1 3 5 b7 13",
    "addb9, 1 3 5 b9",
    "add7, 1 3 5 b7",
    "7no3, 1 5 b7",
    "9omit5, 1 3 b7 9",
    "7no5th, 1 3 b7",
    "7b5, 1 3 b5 b7",
    "7#5, 1 3 #5 b7",
    "7-9, 1 3 5 b7 b9",
    "7+9, 1 3 5 b7 #9",
    "7#4, 1 3 5 b7 #11",
    "7b6, 1 3 5 b7 b13",
    "7(b9)(#11), 1 3 5 b7 b9 #11",
    "'7(b9,b13)', 1 3 5 b7 b9 b13",
    "7alt, 1 3 b5 #5 b7 b9 #9",
    "alt, 1 3 b5 #5 b7 b9 #9",
    "maj7lyd, 1 3 5 7 #11",
    "7aug, 1 3 #5 b7",
    "9aug, 1 3 #5 b7 9",
    "m7(11), 1 b3 5 b7 11",
    "6(9), 1 3 5 6 9",
    "dom7, 1 3 5 b7"
  })
  void a_suffix_is_read_from_left_to_right(String suffix, String degrees) {
    assertEquals(degrees, degrees(suffix));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"x", "m5", "7(b9", "7b9)", ",7", "7)(", "mm", "7 b9", "maj7q", "add", "b"})
  void a_part_that_means_nothing_makes_the_whole_mean_nothing(String suffix) {
    assertEquals(Optional.empty(), ChordGrammar.degrees(suffix));
  }

  /** Families by third, fifth, seventh and altered tensions, as chord-scale tables sort them. */
  @ParameterizedTest
  @CsvSource({
    "C, MAJOR",
    "C6, MAJOR_SIXTH",
    "C69, MAJOR_SIXTH",
    "Cmaj7, MAJOR_SEVENTH",
    "Cmaj7#11, LYDIAN_MAJOR",
    "Cmaj7b5, LYDIAN_MAJOR",
    "Cmaj7#5, AUGMENTED_MAJOR",
    "Caug, AUGMENTED",
    "Cm, MINOR",
    "Cm6, MINOR_SIXTH",
    "Cm7, MINOR_SEVENTH",
    "Cm9, MINOR_SEVENTH",
    "Cm(maj7), MINOR_MAJOR",
    "Cm7b5, HALF_DIMINISHED",
    "Cdim, DIMINISHED",
    "Cdim7, DIMINISHED_SEVENTH",
    "C7, DOMINANT",
    "C13, DOMINANT",
    "C7#11, LYDIAN_DOMINANT",
    "C7b5, LYDIAN_DOMINANT",
    "C7b9, FLAT_NINTH_DOMINANT",
    "C7#9, FLAT_NINTH_DOMINANT",
    "C7b13, FLAT_THIRTEENTH_DOMINANT",
    "C13b9, OCTATONIC_DOMINANT",
    "C7b9#11, OCTATONIC_DOMINANT",
    "C7#5, AUGMENTED_DOMINANT",
    "C7#5#9, ALTERED_DOMINANT",
    "C7b5b9, ALTERED_DOMINANT",
    "C7alt, ALTERED_DOMINANT",
    "C7sus4, SUSPENDED",
    "Csus2, SUSPENDED_SECOND",
    "C5, POWER"
  })
  void a_chord_belongs_to_its_family(String symbol, ChordFamily family) {
    ChordFamily found = ChordFamily.of(ChordSymbol.parse(symbol).kind());
    assertEquals(family, found);
    assertEquals(found, ChordFamily.named(found.text()));
    assertEquals(family.name().contains("DOMINANT"), found.isDominant(), "a dominant by its name");
  }
}
