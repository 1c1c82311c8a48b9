package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PreferencesTest {

  @TempDir Path folder;

  @Test
  void what_is_chosen_is_read_back_from_plain_text() throws Exception {
    Path file = folder.resolve("settings.txt");
    Preferences chosen =
        Preferences.usual().with("theme", Preferences.Theme.DARK).with("text-size", "130");
    KeyedText.write(file, "a headline", chosen.values());
    assertEquals("# a headline\ntext-size = 130\ntheme = dark\n", Files.readString(file));
    assertEquals(chosen, new Preferences(KeyedText.read(file)));
  }

  @Test
  void what_cannot_be_understood_counts_as_not_chosen_and_unknown_names_stay() {
    Preferences odd =
        new Preferences(Map.of("theme", "plaid", "text-size", "9000", "hints", "", "later", "x"));
    assertEquals(Preferences.Theme.LIGHT, odd.theme());
    assertEquals(100, odd.textPercent());
    assertEquals(Preferences.Hints.FADING, odd.hints());
    assertEquals("x", odd.with("theme", "dark").values().get("later"));
  }

  @Test
  void a_missing_file_chooses_nothing() {
    assertEquals(Map.of(), KeyedText.read(folder.resolve("nowhere.txt")));
  }
}
