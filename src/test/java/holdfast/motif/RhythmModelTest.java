package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Densities of times. Student's t with 4 degrees of freedom from handbook tables, from memory. */
class RhythmModelTest {

  private static final RhythmModel KEYS = new RhythmModel(Player.KEYBOARD, 1);

  /** A spread of 5 % of the mean step and a drift of 3 % of this one, in quadrature. */
  private static final double SCALE = Math.hypot(0.05, 0.03);

  @Test
  void a_time_that_was_meant_follows_students_t_of_four_degrees_of_freedom() {
    assertEquals(0.375 / SCALE, Math.exp(KEYS.meant(1, 1)), 1e-9);
    assertEquals(0.2146625 / SCALE, Math.exp(KEYS.meant(1 + SCALE, 1)), 1e-5);
    assertEquals(0.2146625 / SCALE, Math.exp(KEYS.meant(1 - SCALE, 1)), 1e-5);
    assertEquals(0.0662913 / SCALE, Math.exp(KEYS.meant(1 + 2 * SCALE, 1)), 1e-5);
  }

  @Test
  void a_longer_step_of_an_idea_of_longer_steps_spreads_as_much_more() {
    RhythmModel slow = new RhythmModel(Player.KEYBOARD, 2);
    assertEquals(KEYS.meant(1.1, 1), slow.meant(2.2, 2) + Math.log(2), 1e-9);
  }

  @Test
  void whatever_was_meant_the_density_of_all_times_comes_to_one() {
    for (double meant : new double[] {0.5, 1, 3}) {
      double sum = 0;
      double width = 0.001;
      for (double step = meant - 8; step < meant + 8; step += width) {
        sum += Math.exp(KEYS.meant(step, meant)) * width;
      }
      assertEquals(1, sum, 1e-4);
    }
  }

  @Test
  void new_material_takes_some_time_or_other() {
    for (double before : new double[] {0, 0.5, 1.7}) {
      double sum = 0;
      double width = 0.002;
      for (double step = width / 2; step < 100; step += width) {
        sum += Math.exp(KEYS.free(step, before)) * width;
      }
      assertEquals(1, sum, 2e-3, "after " + before);
    }
  }

  @Test
  void new_material_repeats_its_last_time_rather_than_take_an_odd_one() {
    assertTrue(KEYS.free(1.7, 1.7) > KEYS.free(1.7, 1));
    assertTrue(KEYS.free(1, 0) > KEYS.free(1.2, 0));
    assertTrue(Double.isFinite(KEYS.free(0, 0)) && KEYS.free(0, 0) < KEYS.free(5.3, 0));
  }
}
