package holdfast.theory;

import java.util.List;
import java.util.Optional;
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

  private static final Pattern QUALITY =
      Pattern.compile("maj|ma(?!dd)|M|Δ|j|min|mi|m|-|dim|°|o|0|ø|aug|\\+|dom");
  private static final Pattern MAJOR_SEVENTH =
      Pattern.compile("(?:maj|ma(?!dd)|M|Δ|j)(13|11|9|7)?");
  private static final Pattern NUMBER = Pattern.compile("6/9|69|13|11|9|7|6|5|4|2");
  private static final Pattern SUSPENDED = Pattern.compile("sus(?:(24|42|2|4)|(13|9|7)|)");
  private static final Pattern ADDED = Pattern.compile("add([b#+-]?)(13|11|9|7|6|4|2)");
  private static final Pattern LEFT_OUT = Pattern.compile("(?:no|omit)(13|11|9|7|5|3|1)(?:rd|th)?");
  private static final Pattern ALTERED = Pattern.compile("([b#+-])(13|11|9|6|5|4|2)");
  private static final Pattern NATURAL = Pattern.compile("13|11|9|7|6");
  private static final Pattern WORD = Pattern.compile("alt|lyd|aug|\\+");

  private final String text;
  private final ChordStack chord = new ChordStack();
  private int at;
  private int openParentheses;

  private ChordGrammar(String text) {
    this.text = text;
  }

  /** The degrees that a suffix in plain signs spells, or empty when a part of it means nothing. */
  static Optional<List<Degree>> degrees(String suffix) {
    ChordGrammar grammar = new ChordGrammar(suffix);
    return grammar.understand() ? Optional.of(grammar.chord.degrees()) : Optional.empty();
  }

  private boolean understand() {
    if (!qualityAndNumber()) {
      return false;
    }
    while (at < text.length()) {
      boolean understood =
          punctuation()
              || suspended()
              || added()
              || leftOut()
              || altered()
              || majorSeventh()
              || natural()
              || word();
      if (!understood) {
        return false;
      }
    }
    return openParentheses == 0;
  }

  private boolean qualityAndNumber() {
    String quality = take(QUALITY).map(Matcher::group).orElse("");
    int seventh = -1;
    switch (quality) {
      case "min", "mi", "m", "-" -> chord.third(-1);
      case "dim", "°", "o", "0" -> {
        chord.third(-1);
        chord.fifth(-1);
        seventh = -2;
      }
      case "ø" -> {
        chord.third(-1);
        chord.fifth(-1);
        chord.seventh(-1);
      }
      case "aug", "+" -> chord.fifth(1);
      case "Δ", "j" -> chord.seventh(0);
      case "maj", "ma", "M" -> seventh = 0;
      default -> {}
    }
    // Minor, diminished or augmented, and then a major seventh: mM7, -Δ9, +maj7.
    boolean mayTurnMajor = !quality.isEmpty() && seventh != 0 && !chord.hasSeventh();
    if (mayTurnMajor && majorSeventh()) {
      return true;
    }
    Optional<String> number = take(NUMBER).map(Matcher::group);
    return number.isEmpty() || number(quality, number.get(), seventh);
  }

  /** The number after the quality: how far the thirds are stacked. */
  private boolean number(String quality, String number, int seventh) {
    switch (number) {
      case "5" -> {
        return bareFifth(quality);
      }
      case "2", "4" -> chord.suspend(Integer.parseInt(number));
      case "6" -> chord.sixth();
      case "6/9", "69" -> {
        chord.sixth();
        chord.ninth();
      }
      default -> chord.upTo(Integer.parseInt(number), seventh);
    }
    return true;
  }

  /** After a root alone a 5 is the bare fifth; after a sign it is altered by it. */
  private boolean bareFifth(String quality) {
    switch (quality) {
      case "" -> chord.leaveOut(3);
      case "-" -> {
        chord.third(0);
        chord.fifth(-1);
      }
      case "+" -> chord.fifth(1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean punctuation() {
    switch (text.charAt(at)) {
      case '(' -> openParentheses++;
      case ')' -> openParentheses--;
      case ',' -> {
        if (at == 0) {
          return false;
        }
      }
      default -> {
        return false;
      }
    }
    at++;
    return openParentheses >= 0;
  }

  private boolean suspended() {
    Optional<Matcher> sus = take(SUSPENDED);
    sus.ifPresent(
        found -> {
          String steps = Optional.ofNullable(found.group(1)).orElse("4");
          steps.chars().forEach(step -> chord.suspend(step - '0'));
          if (found.group(2) != null) {
            chord.upTo(Integer.parseInt(found.group(2)), -1);
          }
        });
    return sus.isPresent();
  }

  private boolean added() {
    Optional<Matcher> add = take(ADDED);
    add.ifPresent(found -> addDegree(compound(found.group(2)), alter(found.group(1))));
    return add.isPresent();
  }

  private boolean leftOut() {
    Optional<Matcher> no = take(LEFT_OUT);
    no.ifPresent(found -> chord.leaveOut(Integer.parseInt(found.group(1))));
    return no.isPresent();
  }

  private boolean altered() {
    Optional<Matcher> sign = take(ALTERED);
    sign.ifPresent(
        found -> {
          int number = compound(found.group(2));
          chord.alter(number == 6 ? 13 : number, alter(found.group(1)));
        });
    return sign.isPresent();
  }

  private boolean majorSeventh() {
    Optional<Matcher> seventh = take(MAJOR_SEVENTH);
    seventh.ifPresent(
        found -> {
          chord.seventh(0);
          if (found.group(1) != null) {
            chord.upTo(Integer.parseInt(found.group(1)), 0);
          }
        });
    return seventh.isPresent();
  }

  private boolean natural() {
    Optional<Integer> number = take(NATURAL).map(found -> Integer.valueOf(found.group()));
    if (number.isEmpty() || (number.get() == 7 && chord.hasSeventh())) {
      return false;
    }
    addDegree(number.get(), 0);
    return true;
  }

  private boolean word() {
    Optional<String> word = take(WORD).map(Matcher::group);
    switch (word.orElse("")) {
      case "alt" -> {
        chord.alter(5, -1);
        chord.alter(5, 1);
        chord.alter(9, -1);
        chord.alter(9, 1);
        chord.seventh(-1);
      }
      case "lyd" -> chord.alter(11, 1);
      case "aug", "+" -> chord.alter(5, 1);
      default -> {
        return false;
      }
    }
    return true;
  }

  /** A seventh that is added without an accidental is the flat one. */
  private void addDegree(int number, int alter) {
    chord.add(number, number == 7 && alter == 0 ? -1 : alter);
  }

  /** Added seconds and fourths are ninths and elevenths; a sharp fourth is a sharp eleventh. */
  private static int compound(String digits) {
    int n = Integer.parseInt(digits);
    return n == 2 || n == 4 ? n + 7 : n;
  }

  private static int alter(String sign) {
    return switch (sign) {
      case "b", "-" -> -1;
      case "#", "+" -> 1;
      default -> 0;
    };
  }

  private Optional<Matcher> take(Pattern pattern) {
    Matcher matcher = pattern.matcher(text).region(at, text.length());
    if (!matcher.lookingAt()) {
      return Optional.empty();
    }
    at = matcher.end();
    return Optional.of(matcher);
  }
}
