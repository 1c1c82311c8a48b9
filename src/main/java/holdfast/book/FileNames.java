package holdfast.book;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;

/**
 * File names from names that people give. Letters and digits of any script stay as they are, so
 * that a folder can be read; everything else is replaced, because one of the usual systems would
 * not have it in a name.
 */
final class FileNames {

  /** Most file systems have room for 255 bytes; a part of a name leaves room for the rest. */
  private static final int MOST_BYTES = 80;

  private FileNames() {}

  /** A readable part of a name; two different texts may give the same. May be empty. */
  static String readable(String text) {
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFC)
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-")
            .replaceAll("^-|-$", "");
    return cut(plain, MOST_BYTES);
  }

  /**
   * A name for this text and no other, apart from upper and lower case: what is not a letter or a
   * digit is written as its bytes ({@code %2F}).
   */
  static String unique(String text) {
    String folded = folded(text);
    StringBuilder name = new StringBuilder();
    folded
        .codePoints()
        .forEach(
            c -> {
              if (Character.isLetterOrDigit(c)) {
                name.appendCodePoint(c);
              } else {
                for (byte b : Character.toString(c).getBytes(StandardCharsets.UTF_8)) {
                  name.append(String.format(Locale.ROOT, "%%%02X", b));
                }
              }
            });
    // "con" or "nul" alone would be a device on some systems.
    return "of-" + name;
  }

  /** The form in which names are compared: composed, without regard to case. */
  static String folded(String text) {
    String composed = Normalizer.normalize(text.strip(), Normalizer.Form.NFKC);
    return composed.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  private static String cut(String text, int bytes) {
    StringBuilder cut = new StringBuilder();
    int used = 0;
    for (int at = 0; at < text.length(); ) {
      int c = text.codePointAt(at);
      used += Character.toString(c).getBytes(StandardCharsets.UTF_8).length;
      if (used > bytes) {
        break;
      }
      cut.appendCodePoint(c);
      at += Character.charCount(c);
    }
    return cut.toString();
  }
}
