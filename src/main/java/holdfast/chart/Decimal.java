package holdfast.chart;

/** Numbers as people write them: 4 rather than 4.0, all digits where they matter. */
final class Decimal {

  private static final double MOST_EXACT_WHOLE = 1e15;

  private Decimal() {}

  /** The shortest text that reads back as the same number. */
  static String text(double number) {
    if (number == Math.rint(number) && Math.abs(number) < MOST_EXACT_WHOLE) {
      return Long.toString((long) number);
    }
    return java.math.BigDecimal.valueOf(number).toPlainString();
  }
}
