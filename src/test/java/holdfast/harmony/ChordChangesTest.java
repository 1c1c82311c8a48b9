package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.Harmony;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Surprisals worked by hand from the chord changes under 456 solos of the Weimar Jazz Database as
 * counted in klausfrieler/jazzodata: of so many changes away from a family of chords, so many go
 * there; each of 120 possible changes counts half a time beforehand.
 */
class ChordChangesTest {

  @ParameterizedTest(name = "{0} to {1}: {2} of {3}")
  @CsvSource({
    "Dm7, G7, 1184, 1961",
    "Dm7, Gm7, 118, 1961",
    "G7, Cmaj7, 931, 3641",
    "G7, C6, 931, 3641",
    "G9, C, 931, 3641",
    "G7b9, C7, 643, 3641",
    "Bm7b5, E7, 268, 320",
    "Cmaj7, A7, 125, 1475",
    "C6, Am7, 111, 1475",
    "Asus4, G#sus4, 61, 134",
    "Asus2, Bbsus2, 61, 134",
    "Cm, G7, 43, 375",
    "Cm6, F7, 43, 375",
    "Cm, Dm7b5, 39, 375",
    "C#dim7, Dm7, 38, 176",
    "Cdim, Bm7, 31, 176",
    "G7sus4, G7, 17, 100",
    "D9sus4, C7sus4, 17, 100",
    "Cm(maj7), Cm7, 8, 16",
    "Cm(maj7), Ab7, 3, 16",
    "Caug, Am7, 1, 3",
    "C+, Abmaj7, 1, 3",
    "F#7#5, B7, 643, 3641",
    "Caug, F#dim7, 0, 3"
  })
  void a_change_is_as_surprising_as_it_is_rare(String from, String to, int times, int of) {
    assertEquals(
        -Math.log((times + 0.5) / (of + 60)) / Math.log(2),
        ChordChanges.COUNTED.surprisalBits(
            Harmony.parse(from).chord().orElseThrow(), Harmony.parse(to).chord().orElseThrow()),
        1e-9);
  }
}
