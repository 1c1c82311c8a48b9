package holdfast.theory;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Understands a chord suffix by its parts: a quality (minor, major seventh, diminished, …), a
 * number (7, 9, 13, 6/9) and then alterations in any order, with or without parentheses and commas.
 * So a symbol that no table holds still has its meaning.
 *
 * <p>"-" after the root means minor, after a number it means flat; "+" after the root means an
 * augmented fifth, after a number sharp. An altered degree stands in the place of the natural one.
 */
final class ChordGrammar {

  private static final Pattern WORD =
      Pattern.compile("(?i)maj(?:or)?|min(?:or)?|dim|aug|sus|add|alt|omit|dom|lyd");

  private static final Pattern QUALITY =
      Pattern.compile("maj|ma(?!dd)|M|Δ|j|min|mi|m|-|dim|°|o|0|ø|aug|\\+|dom");
  private static final Pattern MAJOR_SEVENTH =
      Pattern.compile("(?:maj|ma(?!dd)|M|Δ|j)(13|11|9|7)?");
  private static final Pattern NUMBER = Pattern.compile("6/9|69|13|11|9|7|6|5|4|2");
  private static final Pattern SUS = Pattern.compile("sus(?:(24|42|2|4)|(?=13|9|7)(13|9|7)|)");
  private static final Pattern ADD = Pattern.compile("add(bb|[b#+-]?)(13|11|9|7|6|4|2)");
  private static final Pattern NO = Pattern.compile("(?:no|omit)(13|11|9|7|5|3|1)(?:rd|th)?");
  private static final Pattern ALTERED = Pattern.compile("([b#+-])(13|11|9|6|5|4|2)");
  private static final Pattern NATURAL = Pattern.compile("13|11|9|6|7");
  private static final Pattern ALT = Pattern.compile("alt");
  private static final Pattern LYD = Pattern.compile("lyd");
  private static final Pattern SHARP_FIFTH = Pattern.compile("\\+|aug");

  private final String text;
  private int at;
  private int depth;

  private Degree fifth = new Degree(5, 0);
  private final TreeSet<Degree> third = new TreeSet<>(List.of(new Degree(3, 0)));
  private final TreeSet<Degree> fifths = new TreeSet<>();
  private final TreeSet<Degree> others = new TreeSet<>();
  private final TreeSet<Degree> altered = new TreeSet<>();
  private final TreeSet<Degree> added = new TreeSet<>();
  private final TreeSet<Integer> left = new TreeSet<>();

  private ChordGrammar(String text) {
    this.text = text;
  }

  /** One way of writing for each sign: no blanks, no typographic accidentals, words in small. */
  static String clean(String suffix) {
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
    return WORD.matcher(out)
        .replaceAll(
            word -> {
              String small = word.group().toLowerCase(Locale.ROOT);
              return small.equals("major") ? "maj" : small.equals("minor") ? "min" : small;
            });
  }

  /** The degrees that a cleaned suffix spells, or empty when a part of it means nothing. */
  static Optional<List<Degree>> degrees(String clean) {
    ChordGrammar grammar = new ChordGrammar(clean);
    return grammar.understand() ? Optional.of(grammar.chord()) : Optional.empty();
  }

  private boolean understand() {
    String quality = take(QUALITY).map(Matcher::group).orElse("");
    String number = "";
    boolean major = false;
    switch (quality) {
      case "min", "mi", "m", "-" -> third(-1);
      case "dim", "°", "o", "0" -> {
        third(-1);
        fifth = new Degree(5, -1);
      }
      case "ø" -> {
        third(-1);
        fifth = new Degree(5, -1);
        others.add(new Degree(7, -1));
      }
      case "aug", "+" -> fifth = new Degree(5, 1);
      case "Δ", "j" -> {
        major = true;
        others.add(new Degree(7, 0));
      }
      case "maj", "ma", "M" -> major = true;
      default -> {}
    }
    if (!quality.isEmpty() && !major) {
      Optional<Matcher> seventh = take(MAJOR_SEVENTH);
      if (seventh.isPresent()) {
        major = true;
        others.add(new Degree(7, 0));
        number = Optional.ofNullable(seventh.get().group(1)).orElse("");
      }
    }
    if (number.isEmpty()) {
      number = take(NUMBER).map(Matcher::group).orElse("");
    }
    boolean diminished = fifth.alter() < 0 && !quality.equals("ø");
    if (!number(quality, number, major ? 0 : diminished ? -2 : -1)) {
      return false;
    }
    while (at < text.length()) {
      if (!modifier()) {
        return false;
      }
    }
    return depth == 0;
  }

  private void third(int alter) {
    third.clear();
    third.add(new Degree(3, alter));
  }

  /** The number after the quality: how far the thirds are stacked. */
  private boolean number(String quality, String number, int seventh) {
    switch (number) {
      case "" -> {}
      case "5" -> {
        // After a root alone a 5 is the bare fifth; after a sign it is altered by it.
        switch (quality) {
          case "" -> left.add(3);
          case "-" -> {
            third(0);
            fifth = new Degree(5, -1);
          }
          case "+" -> fifth = new Degree(5, 1);
          default -> {
            return false;
          }
        }
      }
      case "2", "4" -> suspend(Integer.parseInt(number));
      case "6" -> others.add(new Degree(6, 0));
      case "6/9", "69" -> others.addAll(List.of(new Degree(6, 0), new Degree(9, 0)));
      default -> stack(Integer.parseInt(number), seventh);
    }
    return true;
  }

  private void stack(int top, int seventh) {
    if (others.stream().noneMatch(d -> d.number() == 7)) {
      others.add(new Degree(7, seventh));
    }
    for (int n = 9; n <= top; n += 2) {
      others.add(new Degree(n, 0));
    }
  }

  private void suspend(int number) {
    if (third.stream().anyMatch(d -> d.number() == 3)) {
      third.clear();
    }
    third.add(new Degree(number, 0));
  }

  /** One sign after the number; false when it means nothing here. */
  private boolean modifier() {
    char c = text.charAt(at);
    if (c == '(' || (at > 0 && c == ',')) {
      depth += c == '(' ? 1 : 0;
      at++;
      return true;
    }
    if (c == ')' && depth > 0) {
      depth--;
      at++;
      return true;
    }
    Optional<Matcher> found = take(SUS);
    if (found.isPresent()) {
      String steps = found.get().group(1);
      if (found.get().group(2) != null) {
        stack(Integer.parseInt(found.get().group(2)), -1);
      }
      if (steps == null || steps.contains("4")) {
        suspend(4);
      }
      if (steps != null && steps.contains("2")) {
        suspend(2);
      }
      return true;
    }
    found = take(ADD);
    if (found.isPresent()) {
      int n = compound(found.get().group(2));
      int alter = alter(found.get().group(1));
      added.add(new Degree(n, n == 7 ? alter - (alter == 0 ? 1 : 0) : alter));
      return true;
    }
    found = take(NO);
    if (found.isPresent()) {
      left.add(Integer.valueOf(found.get().group(1)));
      return true;
    }
    if (take(ALT).isPresent()) {
      return alteredDominant();
    }
    if (take(LYD).isPresent()) {
      altered.add(new Degree(11, 1));
      return true;
    }
    found = take(ALTERED);
    if (found.isPresent()) {
      int n = compound(found.get().group(2));
      int alter = alter(found.get().group(1));
      (n == 5 ? fifths : altered).add(new Degree(n == 6 ? 13 : n, alter));
      return true;
    }
    found = take(MAJOR_SEVENTH);
    if (found.isPresent()) {
      others.removeIf(d -> d.number() == 7);
      String top = found.get().group(1);
      stack(top == null ? 7 : Integer.parseInt(top), 0);
      return true;
    }
    found = take(NATURAL);
    if (found.isPresent()) {
      int n = Integer.parseInt(found.get().group());
      if (n == 7 && others.stream().anyMatch(d -> d.number() == 7)) {
        return false;
      }
      added.add(new Degree(n, n == 7 ? -1 : 0));
      return true;
    }
    if (take(SHARP_FIFTH).isPresent()) {
      fifths.add(new Degree(5, 1));
      return true;
    }
    return false;
  }

  private boolean alteredDominant() {
    fifths.addAll(List.of(new Degree(5, -1), new Degree(5, 1)));
    altered.addAll(List.of(new Degree(9, -1), new Degree(9, 1)));
    others.add(new Degree(7, -1));
    return true;
  }

  /** Added seconds and fourths are ninths and elevenths; a sharp fourth is a sharp eleventh. */
  private static int compound(String digits) {
    int n = Integer.parseInt(digits);
    return n == 2 || n == 4 ? n + 7 : n;
  }

  private static int alter(String sign) {
    return switch (sign) {
      case "b", "-" -> -1;
      case "bb" -> -2;
      case "#", "+" -> 1;
      default -> 0;
    };
  }

  private Optional<Matcher> take(Pattern pattern) {
    Matcher matcher = pattern.matcher(text).region(at, text.length());
    matcher.useTransparentBounds(true);
    if (!matcher.lookingAt()) {
      return Optional.empty();
    }
    at = matcher.end();
    return Optional.of(matcher);
  }

  private List<Degree> chord() {
    TreeSet<Degree> chord = new TreeSet<>(third);
    chord.add(new Degree(1, 0));
    if (fifths.isEmpty()) {
      chord.add(fifth);
    } else {
      chord.addAll(fifths);
    }
    chord.addAll(others);
    // A thirteenth chord whose ninth or eleventh is altered, or whose third is suspended, is not
    // stacked through the natural eleventh.
    boolean stacked = others.contains(new Degree(13, 0));
    if (stacked && (!altered.isEmpty() || third.stream().anyMatch(d -> d.number() == 4))) {
      chord.remove(new Degree(11, 0));
    }
    for (Degree degree : altered) {
      chord.remove(new Degree(degree.number(), 0));
    }
    if (third.stream().anyMatch(d -> d.number() == 4)) {
      chord.remove(new Degree(11, 0));
    }
    chord.addAll(altered);
    chord.addAll(added);
    chord.removeIf(d -> left.contains(d.number()));
    return List.copyOf(chord);
  }
}
