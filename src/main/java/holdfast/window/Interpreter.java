package holdfast.window;

import holdfast.theory.NoteName;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says in the window's language, and with its names of notes, what the coach says. The coach speaks
 * English with English names, deep in the house; {@code coach_de.txt} holds each sentence that it
 * can say, with blanks, and its German. How a line of it is read stands at its head.
 */
final class Interpreter {

  private static final String FILE = "coach_de.txt";
  private static final String MAIN = "";

  private static final Pattern BLANK =
      Pattern.compile("\\{(\\d)(?::([a-z]+))?}|<(\\d)(?::(note|chord|text))?>");
  private static final String NUMBER = "[0-9.,]+";
  private static final String ANYTHING = ".+?";
  private static final String NOTE = "[A-G](?:[♭♯b#]|𝄪|𝄫)*";
  private static final String CHORD = "\\(?[A-G]\\S*|N\\.C\\.|chord";
  private static final Pattern ROOT_OR_BASS = Pattern.compile("^\\(?" + NOTE + "|/" + NOTE + "$");

  /** What a blank may hold. */
  private sealed interface Blank {

    /** What is found in this part of the book. */
    record Said(String part) implements Blank {}

    /** What looks like this and stays as it is. */
    record Kept(String looks) implements Blank {}

    /** A note or a chord. */
    record Named(String looks) implements Blank {}
  }

  private record Entry(Pattern looks, Map<Integer, Blank> blanks, String english, String german) {}

  private final Map<String, List<Entry>> book;
  private final boolean isEnglish;
  private final NoteNaming naming;

  /** An interpreter into this language, who names notes like this. */
  Interpreter(Language language, NoteNaming naming) {
    this.isEnglish = language == Language.ENGLISH;
    this.naming = naming;
    this.book = isEnglish && naming == NoteNaming.ENGLISH ? Map.of() : read();
  }

  /** The sentence as it is said here; as it came where the book does not know it. */
  String say(String sentence) {
    return known(sentence).orElse(sentence);
  }

  /** The same, but empty where the book does not know it. */
  Optional<String> known(String sentence) {
    return said(MAIN, sentence);
  }

  private Optional<String> said(String part, String text) {
    return book.getOrDefault(part, List.of()).stream()
        .flatMap(entry -> said(entry, text).stream())
        .findFirst();
  }

  private Optional<String> said(Entry entry, String text) {
    Matcher here = entry.looks().matcher(text);
    if (!here.matches()) {
      return Optional.empty();
    }
    Map<Integer, String> filled = new HashMap<>();
    for (Map.Entry<Integer, Blank> blank : entry.blanks().entrySet()) {
      Optional<String> words = filled(blank.getValue(), here.group("b" + blank.getKey()));
      if (words.isEmpty()) {
        return Optional.empty();
      }
      filled.put(blank.getKey(), words.get());
    }
    return Optional.of(
        BLANK
            .matcher(isEnglish ? entry.english() : entry.german())
            .replaceAll(blank -> Matcher.quoteReplacement(filled.get(number(blank.group())))));
  }

  private Optional<String> filled(Blank blank, String text) {
    if (blank instanceof Blank.Said said) {
      return text.isEmpty() ? Optional.of("") : said(said.part(), text);
    }
    return Optional.of(blank instanceof Blank.Named ? renamed(text) : text);
  }

  /** A note, or a chord with its bass, named as here. */
  private String renamed(String text) {
    return ROOT_OR_BASS
        .matcher(text)
        .replaceAll(
            found -> {
              String name = found.group();
              int from = name.startsWith("(") || name.startsWith("/") ? 1 : 0;
              return Matcher.quoteReplacement(
                  name.substring(0, from)
                      + NoteName.read(name.substring(from)).map(naming::name).orElse(name));
            });
  }

  private static int number(String blank) {
    return Character.digit(blank.charAt(1), 10);
  }

  private static Map<String, List<Entry>> read() {
    Map<String, List<Entry>> book = new HashMap<>();
    String part = MAIN;
    String english = "";
    for (String line : lines()) {
      if (line.startsWith("[")) {
        part = line.substring(1, line.length() - 1);
      } else if (line.startsWith("= ")) {
        book.computeIfAbsent(part, p -> new ArrayList<>()).add(entry(english, line.substring(2)));
      } else if (!line.isBlank() && !line.startsWith("#")) {
        english = line;
      }
    }
    return book;
  }

  private static Entry entry(String english, String german) {
    StringBuilder looks = new StringBuilder();
    Map<Integer, Blank> blanks = new HashMap<>();
    Matcher found = BLANK.matcher(english);
    int end = 0;
    while (found.find()) {
      looks.append(Pattern.quote(english.substring(end, found.start())));
      int number = number(found.group());
      Blank blank = blank(found);
      blanks.put(number, blank);
      looks.append("(?<b").append(number).append('>').append(looks(blank)).append(')');
      end = found.end();
    }
    looks.append(Pattern.quote(english.substring(end)));
    return new Entry(Pattern.compile(looks.toString()), blanks, english, german);
  }

  private static Blank blank(Matcher found) {
    if (found.group(1) != null) {
      return new Blank.Said(Optional.ofNullable(found.group(2)).orElse(MAIN));
    }
    return switch (Optional.ofNullable(found.group(4)).orElse("")) {
      case "note" -> new Blank.Named(NOTE);
      case "chord" -> new Blank.Named(CHORD);
      case "text" -> new Blank.Kept(ANYTHING);
      default -> new Blank.Kept(NUMBER);
    };
  }

  private static String looks(Blank blank) {
    if (blank instanceof Blank.Named named) {
      return named.looks();
    }
    return blank instanceof Blank.Kept kept ? kept.looks() : ".*?";
  }

  private static List<String> lines() {
    try (BufferedReader text =
        new BufferedReader(
            new InputStreamReader(
                Interpreter.class.getResourceAsStream(FILE), StandardCharsets.UTF_8))) {
      return text.lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the book of sentences cannot be read", e);
    }
  }
}
