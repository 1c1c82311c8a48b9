package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.chart.ChartLibrary;
import holdfast.window.part.Prose;
import java.awt.GraphicsEnvironment;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Soundbank;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JOptionPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sound banks and charts come in and go out by choosing a file, and by dropping one. */
class FilesRobotTest {

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display() {
    assumeFalse(GraphicsEnvironment.isHeadless(), "there is no DISPLAY here; start an Xvfb");
  }

  private WindowDriver open() throws Exception {
    return WindowDriver.open(
        folder.resolve("home"), 1200, 760, Preferences.usual().with("language", "english"));
  }

  private static String message(WindowDriver driver) {
    return driver.ask(() -> ((Prose) driver.desk().message()).text());
  }

  @Test
  void a_sound_bank_is_chosen_a_file_of_another_kind_is_refused_and_javas_own_comes_back()
      throws Exception {
    Path bank = folder.resolve("own.sf2");
    Soundbank javas = MidiSystem.getSynthesizer().getDefaultSoundbank();
    javas.getClass().getMethod("save", File.class).invoke(javas, bank.toFile());
    Path words = Files.writeString(folder.resolve("words.sf2"), "these are only words");
    try (WindowDriver driver = open()) {
      driver.tell(() -> driver.desk().go(Desk.SETTINGS));
      driver.click(driver.named("settings.soundfont"));
      driver.choose(bank);
      driver.until("it is said", 10, () -> !message(driver).isEmpty());
      assertEquals("The instruments come from own.sf2", message(driver));
      assertEquals(Optional.of(bank), driver.desk().preferences().soundFont());
      assertEquals("own.sf2", driver.desk().devices().sound().bank().name());

      driver.click(driver.named("settings.soundfont"));
      driver.choose(words);
      driver.until("it is refused", 10, () -> message(driver).contains("is not a sound bank"));
      assertEquals(Optional.of(bank), driver.desk().preferences().soundFont());

      driver.click(driver.named("settings.no-soundfont"));
      assertEquals("The instruments come from Java's own instruments", message(driver));
      assertEquals(Optional.empty(), driver.desk().preferences().soundFont());
    }
  }

  @Test
  void a_chart_goes_out_as_music_xml_comes_in_by_choice_and_by_drop_and_replaces_nothing_unasked()
      throws Exception {
    Path out = folder.resolve("out.musicxml");
    try (WindowDriver driver = open()) {
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      JList<?> list = (JList<?>) driver.named("charts.list");
      driver.tell(() -> list.setSelectedValue("Slow Ferry", true));
      driver.click(driver.named("charts.export"));
      driver.choose(out);
      driver.until("it is written", 10, () -> message(driver).contains("out.musicxml"));
      String written = Files.readString(out);
      assertTrue(written.contains("<work-title>Slow Ferry"), written.substring(0, 400));

      driver.tell(() -> list.setSelectedValue("Lantern Turn", true));
      driver.click(driver.named("charts.export"));
      driver.choose(out);
      driver.until("it asks", 10, () -> WindowDriver.dialogPart(JOptionPane.class).isPresent());
      driver.click(answer(driver, "Keep the old one"));
      assertEquals(written, Files.readString(out));
      driver.choose(folder.resolve("other.musicxml"));
      driver.until("it is written", 10, () -> Files.exists(folder.resolve("other.musicxml")));

      Files.writeString(out, written.replace("Slow Ferry", "Fast Ferry"));
      driver.click(driver.named("charts.import"));
      driver.choose(out);
      driver.until("it is there", 10, () -> "Fast Ferry".equals(list.getSelectedValue()));
      assertEquals(
          ChartLibrary.open("slow-ferry").form().bars().size(),
          ChartLibrary.open(folder.resolve("home/charts/fast-ferry.txt").toString())
              .form()
              .bars()
              .size());

      Path late = folder.resolve("late.musicxml");
      Files.writeString(late, written.replace("Slow Ferry", "Late Ferry"));
      JComponent page = driver.desk().shown().orElseThrow().component();
      assertTrue(driver.drop(page, late), "a file can be dropped here");
      assertEquals("Late Ferry", driver.ask(list::getSelectedValue));

      Path spoilt = Files.writeString(folder.resolve("spoilt.musicxml"), "<score-partwise");
      assertTrue(driver.drop(page, spoilt));
      assertTrue(message(driver).contains("spoilt.musicxml"), message(driver));
      assertEquals("Late Ferry", driver.ask(list::getSelectedValue));
    }
  }

  private static JButton answer(WindowDriver driver, String text) {
    return driver.ask(
        () ->
            WindowDriver.all(WindowDriver.dialogPart(JOptionPane.class).orElseThrow()).stream()
                .filter(part -> part instanceof JButton button && button.getText().equals(text))
                .map(JButton.class::cast)
                .findFirst()
                .orElseThrow());
  }
}
