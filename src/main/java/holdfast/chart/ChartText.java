package holdfast.chart;

/**
 * Charts as plain text that a musician can type; the grammar stands in {@code backing/README.md}.
 * What is read, printed and read again is the same chart, remarks included.
 */
public final class ChartText {

  private ChartText() {}

  /**
   * Reads a chart.
   *
   * @param text the whole of it; any line ends, tabs or blanks, with or without a byte-order mark
   * @param sourceName what to call it in an error, mostly the file's name
   * @throws ChartException where it cannot be read, with the place and the mend
   */
  public static Chart parse(String text, String sourceName) {
    return new ChartReader(text, sourceName).read();
  }

  /** Writes a chart, one blank between words, {@code \n} at each line's end. */
  public static String print(Chart chart) {
    return new ChartPrinter(chart).print();
  }
}
