package holdfast.chart;

import java.util.ArrayDeque;
import java.util.Deque;

/** Writes XML line by line, each element indented under its parent. */
final class XmlPage {

  private final StringBuilder out = new StringBuilder();
  private final Deque<String> open = new ArrayDeque<>();

  /** Writes a line as it is. */
  XmlPage line(String text) {
    out.append(text).append('\n');
    return this;
  }

  /**
   * Opens an element.
   *
   * @param attributes names and values in turn
   */
  XmlPage open(String name, String... attributes) {
    indent().append('<').append(name);
    attributes(attributes);
    out.append(">\n");
    open.push(name);
    return this;
  }

  /** Closes the element that was opened last. */
  XmlPage close() {
    String name = open.pop();
    indent().append("</").append(name).append(">\n");
    return this;
  }

  /** Writes an element that holds text only; where the text is empty, an empty element. */
  XmlPage leaf(String name, String text, String... attributes) {
    indent().append('<').append(name);
    attributes(attributes);
    if (text.isEmpty()) {
      out.append("/>\n");
    } else {
      out.append('>').append(escaped(text)).append("</").append(name).append(">\n");
    }
    return this;
  }

  @Override
  public String toString() {
    return out.toString();
  }

  private StringBuilder indent() {
    return out.append("  ".repeat(open.size()));
  }

  private void attributes(String... attributes) {
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"").append(escaped(attributes[i + 1]));
      out.append('"');
    }
  }

  /** The text with its special signs escaped; what XML 1.0 cannot hold at all is left out. */
  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    text.codePoints()
        .filter(XmlPage::isAllowed)
        .forEach(
            c -> {
              switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                default -> escaped.appendCodePoint(c);
              }
            });
    return escaped.toString();
  }

  /** The production Char of XML 1.0. */
  private static boolean isAllowed(int c) {
    return c == '\t' || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) || c >= 0x10000;
  }
}
