package holdfast.chart;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One typed line and where it stands.
 *
 * @param source the chart's name, for errors
 * @param number counted from 1
 * @param text without its line end
 */
record TextLine(String source, int number, String text) {

  /** A name, a colon and a value; bars never start like this. */
  record HeadLine(String name, String value, int valueAt) {}

  /** A name in a box, as {@code [A]}, and where the box ends. */
  record Boxed(String name, int end) {}

  private static final Pattern HEAD = Pattern.compile("\\s*(\\p{L}[\\p{L} -]*?)\\s*:(?!\\|)(.*)");
  private static final Pattern BOX = Pattern.compile("\\s*\\[\\s*([^\\]]*?)\\s*\\]");
  private static final String REMARK = "--";

  boolean isBlank() {
    return text.isBlank();
  }

  /** The remark, where the line is nothing else. */
  Optional<String> wholeRemark() {
    String stripped = text.strip();
    return stripped.startsWith(REMARK)
        ? Optional.of(stripped.substring(REMARK.length()).strip())
        : Optional.empty();
  }

  /** The remark that starts here, where one does and says something. */
  Optional<String> remarkFrom(int at) {
    int start = at + leadingBlanks(at);
    if (!startsRemark(start)) {
      return Optional.empty();
    }
    String words = text.substring(start + REMARK.length()).strip();
    return words.isEmpty() ? Optional.empty() : Optional.of(words);
  }

  boolean startsRemark(int at) {
    return text.startsWith(REMARK, at);
  }

  boolean restIsBlankOrRemark(int at) {
    int start = at + leadingBlanks(at);
    return start == text.length() || startsRemark(start);
  }

  private int leadingBlanks(int at) {
    int end = at;
    while (end < text.length() && Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    return end - at;
  }

  Optional<HeadLine> asHeadLine() {
    Matcher matcher = HEAD.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    int valueAt = matcher.start(2) + leadingBlanks(matcher.start(2));
    return Optional.of(new HeadLine(matcher.group(1), matcher.group(2).strip(), valueAt));
  }

  Optional<Boxed> boxedName() {
    Matcher matcher = BOX.matcher(text);
    if (!matcher.lookingAt()) {
      if (text.strip().startsWith("[")) {
        throw wrong(text.indexOf('['), "a section's name is not closed", "write it as [A]");
      }
      return Optional.empty();
    }
    if (matcher.group(1).isEmpty()) {
      throw wrong(text.indexOf('['), "a section has no name", "write one, as in [A]");
    }
    return Optional.of(new Boxed(matcher.group(1).strip(), matcher.end()));
  }

  /** A mistake at an index of the line. */
  ChartException wrong(int at, String wrong, String mend) {
    int column = 1 + text.codePointCount(0, Math.min(at, text.length()));
    return new ChartException(source, number, column, wrong, mend);
  }
}
