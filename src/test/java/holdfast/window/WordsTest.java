package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WordsTest {

  private static Properties words(String file) throws IOException {
    Properties words = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(file);
        InputStreamReader text = new InputStreamReader(in, StandardCharsets.UTF_8)) {
      words.load(text);
    }
    return words;
  }

  @Test
  void german_says_all_that_english_says_with_the_same_blanks() throws IOException {
    Properties english = words("words.properties");
    Properties german = words("words_de.properties");
    Set<String> missing = new TreeSet<>(english.stringPropertyNames());
    missing.removeAll(german.stringPropertyNames());
    assertEquals(Set.of(), missing);
    Set<String> extra = new TreeSet<>(german.stringPropertyNames());
    extra.removeAll(english.stringPropertyNames());
    assertEquals(Set.of(), extra);
    for (String key : english.stringPropertyNames()) {
      assertEquals(
          blanks(english.getProperty(key)), blanks(german.getProperty(key)), "blanks of " + key);
    }
  }

  private static Set<String> blanks(String text) {
    Set<String> blanks = new TreeSet<>();
    Matcher matcher = Pattern.compile("\\{\\d+}").matcher(text);
    while (matcher.find()) {
      blanks.add(matcher.group());
    }
    return blanks;
  }

  @Test
  void every_word_that_the_window_asks_for_is_there() throws IOException {
    Properties english = words("words.properties");
    Pattern asked =
        Pattern.compile(
            "(?:say|title|heading|button|primary|named|menu|item)\\(\\s*(?:words, )?\"([a-z0-9-]+\\.[a-z0-9.-]+)\"");
    Set<String> missing = new TreeSet<>();
    int found = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/holdfast/window"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        Matcher matcher = asked.matcher(Files.readString(file));
        while (matcher.find()) {
          found++;
          String key = matcher.group(1);
          if (!english.containsKey(key)) {
            missing.add(key);
          }
        }
      }
    }
    assertEquals(Set.of(), missing);
    assertFalse(found < 80, "the pattern finds what is asked for: " + found);
  }

  @Test
  void every_choice_has_a_word_in_both_languages() {
    for (Language language : Language.values()) {
      Words words = new Words(language);
      for (Preferences.Hints each : Preferences.Hints.values()) {
        assertFalse(words.of("hints", each).isBlank());
      }
      for (holdfast.session.Feedback each : holdfast.session.Feedback.values()) {
        assertFalse(words.of("feedback", each).isBlank());
      }
      for (holdfast.backing.Feel each : holdfast.backing.Feel.values()) {
        assertFalse(words.of("feel", each).isBlank());
      }
      for (holdfast.harmony.FitWord each : holdfast.harmony.FitWord.values()) {
        assertFalse(words.of("fit", each).isBlank());
      }
      for (NoteNaming each : NoteNaming.values()) {
        assertFalse(words.of("note-names", each).isBlank());
      }
      for (holdfast.book.SelfEstimate.Feeling each : holdfast.book.SelfEstimate.Feeling.values()) {
        assertFalse(words.of("felt", each).isBlank());
      }
      for (String profile : holdfast.listening.calibration.Profile.names()) {
        assertFalse(words.say("profile." + profile).isBlank());
      }
    }
  }
}
