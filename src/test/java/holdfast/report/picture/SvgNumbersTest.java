package holdfast.report.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/**
 * The numbers of a picture hold to decimal arithmetic (java.math.BigDecimal of the platform, half
 * to even).
 */
class SvgNumbersTest {

  private static String decimal(double length) {
    return BigDecimal.valueOf(length)
        .setScale(2, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  @Property(seed = "20261125")
  void any_length_is_written_as_its_decimals_round(
      @ForAll @DoubleRange(min = -2_000_000, max = 2_000_000) double length) {
    assertEquals(decimal(length), Svg.hundredths(length));
  }

  @Property(seed = "20261125")
  void thousandths_are_written_as_their_decimals_round(
      @ForAll @IntRange(min = -200_000, max = 200_000) int thousandths) {
    assertEquals(decimal(thousandths / 1000.0), Svg.hundredths(thousandths / 1000.0));
    float single = thousandths / 1000f;
    assertEquals(decimal(single), Svg.hundredths(single));
  }
}
