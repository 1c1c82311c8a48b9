package holdfast.theory;

import java.util.Locale;
import java.util.regex.Pattern;

/** One way of writing for each sign of a chord suffix. */
final class ChordSigns {

  private static final Pattern WORD =
      Pattern.compile("(?i)maj(?:or)?|min(?:or)?|dim|aug|sus|add|alt|omit|dom|lyd");

  private ChordSigns() {}

  /**
   * The suffix without blanks and natural signs, with {@code b}, {@code #}, {@code -}, {@code Δ},
   * {@code °} and {@code ø} for all their look-alikes, and whole words in small letters. A single M
   * or m is left as it is: it says major or minor.
   */
  static String plain(String suffix) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < suffix.length(); i++) {
      char c = suffix.charAt(i);
      switch (c) {
        case ' ', '\u00A0', '♮' -> {}
        case '♭' -> out.append('b');
        case '♯' -> out.append('#');
        case '△', '∆', '▵' -> out.append('Δ');
        case 'º', '˚' -> out.append('°');
        case 'Ø', '∅' -> out.append('ø');
        case '−', '–' -> out.append('-');
        default -> out.append(c);
      }
    }
    return WORD.matcher(out).replaceAll(word -> small(word.group()));
  }

  private static String small(String word) {
    String small = word.toLowerCase(Locale.ROOT);
    return switch (small) {
      case "major" -> "maj";
      case "minor" -> "min";
      default -> small;
    };
  }
}
