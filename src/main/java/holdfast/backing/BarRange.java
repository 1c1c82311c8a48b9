package holdfast.backing;

import holdfast.mistake.UserMistake;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Some bars of the form, in a row.
 *
 * @param first the first, from 1
 * @param last the last, not before the first
 */
public record BarRange(int first, int last) {

  private static final Pattern WRITTEN =
      Pattern.compile("\\s*([0-9]{1,4})\\s*(?:(?:\\.\\.|-|–)\\s*([0-9]{1,4})\\s*)?");

  /** Checks the order. */
  public BarRange {
    if (first < 1 || last < first) {
      throw new IllegalArgumentException("bars go up from 1, not from " + first + " to " + last);
    }
  }

  /**
   * Reads {@code 5..8}, {@code 5-8} or {@code 5}.
   *
   * @throws UserMistake where the text names no bars
   */
  public static BarRange parse(String text) {
    Matcher matcher = WRITTEN.matcher(text);
    if (matcher.matches()) {
      int first = Integer.parseInt(matcher.group(1));
      int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
      if (first >= 1 && last >= first) {
        return new BarRange(first, last);
      }
    }
    throw new UserMistake("\"" + text + "\" names no bars; write 5..8 for bars 5 to 8");
  }

  /** Whether the bar is one of them. */
  public boolean contains(int bar) {
    return bar >= first && bar <= last;
  }

  /** In words: {@code bars 5 to 6}. */
  public String words() {
    return first == last ? "bar " + first : "bars " + first + " to " + last;
  }

  /** How many bars. */
  public int size() {
    return last - first + 1;
  }
}
