package holdfast.chart;

/** A bar that cannot be played as it is written. */
final class UnplayableBarException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final int index;
  private final String wrong;
  private final String mend;

  /**
   * A bar and what is wrong with it.
   *
   * @param index the bar's place among all written bars, from 0
   */
  UnplayableBarException(int index, String wrong, String mend) {
    super("written bar " + (index + 1) + ": " + wrong + "; " + mend);
    this.index = index;
    this.wrong = wrong;
    this.mend = mend;
  }

  int index() {
    return index;
  }

  String wrong() {
    return wrong;
  }

  String mend() {
    return mend;
  }
}
