package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * Values worked by hand from the definition of graded interval edit distance: an interval that is d
 * semitones off costs min(1, d/3), one too many or too few costs 1, over the longer length. The
 * definition is from published comparisons with listeners' ratings of sung copies.
 */
class SimilarityTest {

  private static Line line(int... pitches) {
    return Line.of(Written.typical(0, pitches), 0.5);
  }

  @Test
  void one_semitone_off_in_one_of_four_intervals_and_its_return_costs_a_sixth() {
    assertEquals(
        1 - (1 / 3.0 + 1 / 3.0) / 4,
        Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 71, 69, 64)),
        1e-12);
  }

  @Test
  void three_semitones_off_or_more_cost_one() {
    assertEquals(
        1 - 1.0 / 4,
        Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 72, 69, 57)),
        1e-12);
  }

  @Test
  void a_missing_note_at_the_end_costs_one_interval() {
    assertEquals(
        1 - 1.0 / 4, Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 72, 69)), 1e-12);
  }

  @Test
  void degrees_do_not_mind_octaves() {
    assertEquals(1, Similarity.degrees(line(60, 64, 67), line(72, 64, 55)), 1e-12);
  }
}
