package holdfast.chart;

/**
 * A bar as it stands on the page.
 *
 * @param contents what stands between its bar lines
 * @param unexpected whether the teacher marked it as a turn that the ear does not expect; of a
 *     two-bar repeat the first bar is meant
 * @param signs the repeat signs, endings and double lines around it
 */
public record WrittenBar(BarContents contents, boolean unexpected, RepeatSigns signs) {

  /** The same bar, marked as unexpected or not. */
  public WrittenBar marked(boolean isUnexpected) {
    return new WrittenBar(contents, isUnexpected, signs);
  }

  /** The same bar with other contents. */
  public WrittenBar holding(BarContents others) {
    return new WrittenBar(others, unexpected, signs);
  }
}
