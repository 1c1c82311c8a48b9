package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadTest {

  /** Tables of the standard normal distribution, as any handbook has them (from memory). */
  @ParameterizedTest
  @CsvSource({"0, 0.5", "0.5, 0.3085", "1, 0.1587", "1.6449, 0.05", "1.96, 0.025", "-1, 0.8413"})
  void the_chance_above_keeps_within_a_hundredth_of_the_normal_tables(double z, double above) {
    assertEquals(above, Spread.normalAbove(3 + 2 * z, 3, 2), 0.0096);
  }

  @Test
  void the_normal_density_has_its_known_peak() {
    // 1/√(2π) = 0.398942 (handbook of mathematical functions, from memory).
    assertEquals(0.398942, Spread.normal(5, 5, 1), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({"0.2, 0.9, 3", "0.9, 0.9, 3", "4, 0.9, 3", "0.3, 0.2, 4"})
  void the_density_is_what_the_chance_above_loses(double x, double median, double steepness) {
    double h = 1e-6;
    double lost =
        (Spread.logLogisticAbove(x - h, median, steepness)
                - Spread.logLogisticAbove(x + h, median, steepness))
            / (2 * h);
    assertEquals(lost, Spread.logLogistic(x, median, steepness), 1e-6);
  }

  @Test
  void half_lies_above_the_median_and_nothing_below_zero() {
    assertEquals(0.5, Spread.logLogisticAbove(0.9, 0.9, 3), 1e-12);
    assertEquals(1, Spread.logLogisticAbove(-1, 0.9, 3));
    assertEquals(0, Spread.logLogistic(0, 0.9, 3));
    assertEquals(0, Spread.logLogistic(1e300, 0.9, 3));
  }
}
