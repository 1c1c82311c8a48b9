package holdfast.session.log;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * One line of a take's log: a checksum of eight hexadecimal digits, a blank, what is said, a line
 * feed. Said is a word and what belongs to it.
 *
 * @param word what kind of thing happened
 * @param rest all that follows, in a form that the word knows; may be empty
 */
record LogLine(String word, String rest) {

  private static final int DIGITS = 8;

  /** The first line of a log names its kind and its writer; in bytes. */
  private static final int LONGEST_FIRST_LINE = 100;

  /** Reads a line without its line feed; empty where it is damaged. */
  static Optional<LogLine> read(byte[] bytes, int from, int to) {
    int said = from + DIGITS + 1;
    if (said > to || bytes[said - 1] != ' ') {
      return Optional.empty();
    }
    String sum = new String(bytes, from, DIGITS, StandardCharsets.US_ASCII);
    if (!sum.equals(checksum(bytes, said, to - said))) {
      return Optional.empty();
    }
    String text = new String(bytes, said, to - said, StandardCharsets.UTF_8);
    int blank = text.indexOf(' ');
    return Optional.of(
        blank < 0
            ? new LogLine(text, "")
            : new LogLine(text.substring(0, blank), text.substring(blank + 1)));
  }

  /** Whether these bytes may be the beginning of a first line that was cut off. */
  static boolean mayBegin(byte[] bytes) {
    int sum = Math.min(bytes.length, DIGITS);
    for (int i = 0; i < bytes.length; i++) {
      boolean fits = i < sum ? Character.digit(bytes[i], 16) >= 0 : bytes[i] != '\n';
      if (!fits) {
        return false;
      }
    }
    return bytes.length < LONGEST_FIRST_LINE;
  }

  /** The line as it stands in the file, with its line feed. */
  String written() {
    String said = rest.isEmpty() ? word : word + " " + rest;
    byte[] bytes = said.getBytes(StandardCharsets.UTF_8);
    return checksum(bytes, 0, bytes.length) + " " + said + "\n";
  }

  /** Text that may hold anything, on one line. */
  static String escaped(String text) {
    return text.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r");
  }

  /** The text that was escaped. */
  static String unescaped(String text) {
    StringBuilder plain = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\\' && i + 1 < text.length()) {
        i++;
        c = text.charAt(i);
        plain.append(c == 'n' ? '\n' : c == 'r' ? '\r' : c);
      } else {
        plain.append(c);
      }
    }
    return plain.toString();
  }

  private static String checksum(byte[] bytes, int from, int length) {
    CRC32C sum = new CRC32C();
    sum.update(bytes, from, length);
    return HexFormat.of().toHexDigits((int) sum.getValue());
  }
}
