package holdfast.chart;

import java.util.List;
import java.util.Optional;

/** A line of a chart's body, as it was typed. */
public sealed interface ChartLine {

  /**
   * Names the section that starts here, as the boxed letter on a lead sheet does.
   *
   * @param name one line without {@code ]}, not blank
   * @param remark what stands behind it for people to read, where anything does
   */
  record SectionName(String name, Optional<String> remark) implements ChartLine {

    /** Checks that the name can be written. */
    public SectionName {
      if (name.isEmpty() || !Remarks.isOneLine(name) || name.indexOf(']') >= 0) {
        throw new IllegalArgumentException("a section's name is one line without ]: " + name);
      }
      Remarks.check(remark);
    }
  }

  /**
   * Bars that stand side by side; four in a row is common.
   *
   * @param bars at least one
   * @param remark what stands behind them for people to read, where anything does
   */
  record Row(List<WrittenBar> bars, Optional<String> remark) implements ChartLine {

    /** Checks that there is a bar. */
    public Row {
      bars = List.copyOf(bars);
      if (bars.isEmpty()) {
        throw new IllegalArgumentException("a row holds at least one bar");
      }
      Remarks.check(remark);
    }
  }

  /**
   * A remark on a line of its own.
   *
   * @param text one line, may be empty
   */
  record RemarkLine(String text) implements ChartLine {

    /** Checks that the text is one line. */
    public RemarkLine {
      if (!Remarks.isOneLine(text)) {
        throw new IllegalArgumentException(
            "a remark is one line without blanks around it, not “" + text + "”");
      }
    }
  }
}
