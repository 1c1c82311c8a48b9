package holdfast.chart;

import holdfast.mistake.UserMistake;

/**
 * A chart that cannot be read. Its message is one sentence for the user: the file, the place, what
 * is wrong there, and the mend.
 */
public final class ChartException extends UserMistake {

  private static final long serialVersionUID = 1L;

  private final String source;
  private final int line;
  private final int column;
  private final String wrong;
  private final String mend;

  /**
   * A mistake at a place.
   *
   * @param source the file's or the chart's name
   * @param line counted from 1; 0 where the mistake has no line
   * @param column counted from 1, in characters; 0 where the mistake has no column
   * @param wrong what is wrong, a clause without a full stop
   * @param mend what to do about it, a clause without a full stop
   */
  public ChartException(String source, int line, int column, String wrong, String mend) {
    super(place(source, line, column) + ": " + wrong + "; " + mend);
    this.source = source;
    this.line = line;
    this.column = column;
    this.wrong = wrong;
    this.mend = mend;
  }

  /** A mistake of the whole file. */
  public ChartException(String source, String wrong, String mend) {
    this(source, 0, 0, wrong, mend);
  }

  /** The file's or the chart's name. */
  public String source() {
    return source;
  }

  /** The line, counted from 1; 0 where there is none. */
  public int line() {
    return line;
  }

  /** The column, counted from 1 in characters; 0 where there is none. */
  public int column() {
    return column;
  }

  /** What is wrong. */
  public String wrong() {
    return wrong;
  }

  /** What to do about it. */
  public String mend() {
    return mend;
  }

  private static String place(String source, int line, int column) {
    if (line == 0) {
      return source;
    }
    return source + ", line " + line + (column == 0 ? "" : ", column " + column);
  }
}
