package holdfast.chart;

import java.util.Optional;

/** What the free words in a chart may be: one line, as it can be typed and read again. */
final class Remarks {

  private Remarks() {}

  /** Whether the words stand on one line and have no blanks around them. */
  static boolean isOneLine(String words) {
    return words.equals(words.strip()) && words.indexOf('\n') < 0 && words.indexOf('\r') < 0;
  }

  /** Fails unless the remark at a line's end can be written. */
  static void check(Optional<String> remark) {
    if (remark.isPresent() && (remark.get().isEmpty() || !isOneLine(remark.get()))) {
      throw new IllegalArgumentException(
          "a remark is one line without blanks around it, not “" + remark.get() + "”");
    }
  }
}
