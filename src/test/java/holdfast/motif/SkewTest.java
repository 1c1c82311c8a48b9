package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.PitchClassSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a note goes when its chord changes under it. */
class SkewTest {

  @ParameterizedTest
  @ValueSource(ints = {60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71})
  void a_note_stays_or_goes_to_a_neighbour(int place) {
    for (Ground ground : new Ground[] {Lines.C, Ground.UNKNOWN}) {
      double sum = 0;
      for (int by = -12; by <= 12; by++) {
        sum += Skew.share(by, place, ground);
      }
      assertEquals(1, sum, 1e-12);
    }
  }

  @Test
  void a_note_that_clashes_moves_and_one_that_fits_stays() {
    assertTrue(Skew.share(0, 64, Lines.C) > 0.5, "E over Cmaj7");
    assertTrue(Skew.share(0, 65, Lines.C) < 0.5, "F over Cmaj7");
    assertTrue(Skew.share(-1, 65, Lines.C) > Skew.share(2, 65, Lines.C), "to E rather than to G");
    assertTrue(Skew.share(2, 65, Lines.C) > 0, "to G");
  }

  @Test
  void no_note_moves_onto_one_that_clashes_or_farther_than_a_whole_tone() {
    assertEquals(0, Skew.share(1, 64, Lines.C), "E to F");
    assertEquals(0, Skew.share(-2, 67, Lines.C), "G to F");
    assertEquals(0, Skew.share(3, 64, Lines.C), "E to G");
    assertEquals(0, Skew.share(-3, 67, Lines.C), "G to E");
  }

  @Test
  void where_no_chord_asks_a_note_moves_by_a_semitone_at_most() {
    assertEquals(0, Skew.share(2, 64, Ground.UNKNOWN));
    assertEquals(0, Skew.share(-2, 64, Ground.UNKNOWN));
    assertEquals(Skew.share(1, 64, Ground.UNKNOWN), Skew.share(-1, 64, Ground.UNKNOWN));
    assertTrue(Skew.share(1, 64, Ground.UNKNOWN) > 0);
  }

  @Test
  void one_neighbour_that_fits_takes_all_that_moves() {
    Ground bare = new Ground(PitchClassSet.of(0), PitchClassSet.of(0, 1), PitchClassSet.of(0));
    assertEquals(1 - Skew.share(0, 61, bare), Skew.share(-1, 61, bare), 1e-12);
    assertEquals(1 - Skew.share(0, 62, bare), Skew.share(-2, 62, bare), 1e-12);
  }
}
