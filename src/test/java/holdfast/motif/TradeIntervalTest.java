package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names of intervals by semitones, as every theory book has them. */
class TradeIntervalTest {

  @ParameterizedTest
  @CsvSource({
    "1, up a half step",
    "-2, down a whole step",
    "3, up a minor third",
    "-4, down a major third",
    "5, up a fourth",
    "6, up a tritone",
    "-7, down a fifth",
    "8, up a minor sixth",
    "9, up a major sixth",
    "10, up a minor seventh",
    "-11, down a major seventh",
    "12, up an octave",
    "-12, down an octave",
    "19, up an octave and a fifth",
    "-15, down an octave and a minor third",
    "24, up 2 octaves",
    "31, up 2 octaves and a fifth"
  })
  void a_distance_has_its_name(int semitones, String name) {
    assertEquals(name, TradeInterval.moved(semitones));
  }
}
