package holdfast.window;

import holdfast.session.Feedback;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What the user chose, as text. A value that cannot be understood counts as not chosen; names that
 * this version does not know are kept.
 *
 * @param values the names and values of the file
 */
public record Preferences(Map<String, String> values) {

  /** Smallest and largest text, in per cent of the system's. */
  public static final int SMALLEST_TEXT = 100;

  public static final int LARGEST_TEXT = 150;

  /** Light or dark paper. */
  public enum Theme {
    LIGHT,
    DARK
  }

  /** Where the player is heard. */
  public enum Listening {
    VOICE,
    KEYBOARD
  }

  /** Whether the idea is shown where it could go. */
  public enum Hints {
    /** Always. */
    ON,
    /** Paler with every phrase that carries the idea, back when it is lost. */
    FADING,
    /** Never. */
    OFF
  }

  /** Copies. */
  public Preferences {
    values = Map.copyOf(values);
  }

  /** Nothing chosen yet. */
  public static Preferences usual() {
    return new Preferences(Map.of());
  }

  /** The same with one value chosen. */
  public Preferences with(String name, String value) {
    Map<String, String> changed = new TreeMap<>(values);
    changed.put(name, value);
    return new Preferences(changed);
  }

  /** The same with one value no longer chosen. */
  public Preferences without(String name) {
    Map<String, String> changed = new TreeMap<>(values);
    changed.remove(name);
    return new Preferences(changed);
  }

  /** A value, if it is chosen and not blank. */
  public Optional<String> text(String name) {
    return Optional.ofNullable(values.get(name)).filter(v -> !v.isBlank());
  }

  /** A whole number within its bounds, or else this one. */
  public int number(String name, int least, int most, int otherwise) {
    try {
      return text(name)
          .map(Integer::parseInt)
          .filter(n -> n >= least && n <= most)
          .orElse(otherwise);
    } catch (NumberFormatException notANumber) {
      return otherwise;
    }
  }

  /** One of an enum's words, in small letters, or else this one. */
  public <E extends Enum<E>> E choice(String name, E otherwise) {
    return text(name)
        .flatMap(
            word ->
                Arrays.stream(otherwise.getDeclaringClass().getEnumConstants())
                    .filter(e -> word(e).equals(word.toLowerCase(Locale.ROOT)))
                    .findFirst())
        .orElse(otherwise);
  }

  /** How an enum's constant stands in the file. */
  public static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Light or dark paper. */
  public Theme theme() {
    return choice("theme", Theme.LIGHT);
  }

  /** Text size in per cent. */
  public int textPercent() {
    return number("text-size", SMALLEST_TEXT, LARGEST_TEXT, SMALLEST_TEXT);
  }

  /** The language of the window. */
  public Language language() {
    return choice("language", Language.ofSystem());
  }

  /** How notes are named. */
  public NoteNaming noteNames() {
    return choice("note-names", NoteNaming.ENGLISH);
  }

  /** Where the player is heard. */
  public Listening listening() {
    return choice("listening", Listening.KEYBOARD);
  }

  /** How often the coach speaks. */
  public Feedback feedback() {
    return choice("feedback", Feedback.PHRASE);
  }

  /** Whether the idea is shown where it could go. */
  public Hints hints() {
    return choice("hints", Hints.FADING);
  }

  /** How loud, 0 to 100. */
  public int volumePercent() {
    return number("volume", 0, 100, 50);
  }

  /** A sound bank of the user's. */
  public Optional<Path> soundFont() {
    try {
      return text("soundfont").map(Path::of);
    } catch (InvalidPathException notAPath) {
      return Optional.empty();
    }
  }

  /** Whether something is chosen by yes and no. */
  public boolean isOn(String name, boolean otherwise) {
    return text(name).map(v -> v.equalsIgnoreCase("yes")).orElse(otherwise);
  }

  /** The same with a yes or a no. */
  public Preferences with(String name, boolean value) {
    return with(name, value ? "yes" : "no");
  }

  /** The same with one of an enum's words. */
  public Preferences with(String name, Enum<?> value) {
    return with(name, word(value));
  }
}
