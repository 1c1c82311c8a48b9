package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.listening.PlayedNote;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The definition is that of E. Cambouropoulos, "The Local Boundary Detection Model (LBDM) and its
 * application in the study of expressive timing", ICMC 2001 (from memory; weights .25, .50, .25).
 * The series was worked by hand from the definition.
 */
class LocalBoundariesTest {

  private static final double EXACT = 1e-9;

  /** IOIs 1 1 2 1 s, rests .25 .25 1 .25 s, pitch intervals 2 1 5 2 semitones. */
  private static final List<PlayedNote> WORKED =
      List.of(
          PlayedNote.key(0, 0.75, 60, 80),
          PlayedNote.key(1, 0.75, 62, 80),
          PlayedNote.key(2, 1, 63, 80),
          PlayedNote.key(4, 0.75, 68, 80),
          PlayedNote.key(5, 1, 66, 80));

  @Test
  void the_degree_of_change_is_the_difference_over_the_sum() {
    assertEquals(1 / 3.0, LocalBoundaries.change(1, 2), EXACT);
    assertEquals(1 / 3.0, LocalBoundaries.change(2, 1), EXACT);
    assertEquals(1, LocalBoundaries.change(0, 3), EXACT);
    assertEquals(0, LocalBoundaries.change(0, 0), EXACT);
  }

  @Test
  void the_strength_of_an_interval_is_its_size_times_the_change_on_both_sides() {
    // Changes between 1 1 2 1: 0, 1/3, 1/3. Strengths 1·0, 1·(0+1/3), 2·(1/3+1/3), 1·(1/3).
    assertArrayEquals(
        new double[] {0, 0.25, 1, 0.25}, LocalBoundaries.profile(new double[] {1, 1, 2, 1}), EXACT);
    // Changes between .25 .25 1 .25: 0, .6, .6. Strengths 0, .15, 1.2, .15.
    assertArrayEquals(
        new double[] {0, 0.125, 1, 0.125},
        LocalBoundaries.profile(new double[] {0.25, 0.25, 1, 0.25}),
        EXACT);
    // Changes between 2 1 5 2: 1/3, 2/3, 3/7. Strengths 2/3, 1, 5·23/21 = 115/21, 6/7.
    assertArrayEquals(
        new double[] {14 / 115.0, 21 / 115.0, 1, 18 / 115.0},
        LocalBoundaries.profile(new double[] {2, 1, 5, 2}),
        EXACT);
  }

  @Test
  void the_worked_series_comes_out_as_by_hand() {
    assertArrayEquals(
        new double[] {
          0.25 * 14 / 115,
          0.25 * 21 / 115 + 0.5 * 0.25 + 0.25 * 0.125,
          1,
          0.25 * 18 / 115 + 0.5 * 0.25 + 0.25 * 0.125
        },
        LocalBoundaries.strengths(WORKED),
        EXACT);
  }

  @Test
  void where_nothing_changes_no_boundary_is_felt() {
    List<PlayedNote> even =
        List.of(
            PlayedNote.key(0, 1, 60, 80),
            PlayedNote.key(1, 1, 60, 80),
            PlayedNote.key(2, 1, 60, 80),
            PlayedNote.key(3, 1, 60, 80));
    assertArrayEquals(new double[3], LocalBoundaries.strengths(even), EXACT);
    assertEquals(0, LocalBoundaries.strengths(even.subList(0, 1)).length);
    assertEquals(0, LocalBoundaries.strengths(List.of()).length);
  }
}
