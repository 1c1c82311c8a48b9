package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.listening.keyboard.TestCable;
import holdfast.window.part.Prose;
import holdfast.window.play.PlayPage;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.swing.JComboBox;
import javax.swing.JList;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A student is added, plays, is found in the book and deleted again. */
class BookRobotTest {

  private static final String QUICK =
      "title: Quick Gate\nkey: C\ntempo: 240\n\n| Cmaj7 | Am7 | Dm7 | G7 |\n";

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display() {
    assumeFalse(GraphicsEnvironment.isHeadless(), "there is no DISPLAY here; start an Xvfb");
  }

  @AfterEach
  void pull_the_cable_out() {
    TestCable.pullOut();
  }

  @Test
  void a_student_is_added_plays_and_is_deleted_after_a_question() throws Exception {
    Files.createDirectories(folder.resolve("charts"));
    Files.writeString(folder.resolve("charts/quick-gate.txt"), QUICK);
    TestCable.plugIn();
    Preferences english =
        Preferences.usual().with("language", "english").with("ask-feeling", false);
    try (WindowDriver driver = WindowDriver.open(folder, 1200, 760, english)) {
      driver.tell(() -> driver.desk().go(Desk.BOOK));
      driver.until("the book is read", 10, () -> driver.find("book.new").isPresent());
      JTextField name = (JTextField) driver.named("book.new");
      driver.click(driver.named("book.add"));
      assertTrue(message(driver).contains("needs a first name or nickname"), message(driver));
      driver.tell(() -> name.setText(" Mira "));
      driver.click(driver.named("book.add"));
      driver.until("Mira is chosen", 10, () -> "Mira".equals(chosen(driver)));

      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.click(driver.named("charts.play"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
      PlayPage page = driver.desk().playing().orElseThrow();
      for (int i = 0; i < 20 && page.phrases().size() < 2 && driver.desk().isPlaying(); i++) {
        for (int pitch : new int[] {64, 67, 69, 67}) {
          TestCable.send(NOTE_ON, pitch, 90);
          Thread.sleep(110);
          TestCable.send(NOTE_OFF, pitch, 0);
        }
        Thread.sleep(800);
      }
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());

      driver.tell(() -> driver.desk().go(Desk.BOOK));
      driver.until("the take is there", 20, () -> driver.find("book.list").isPresent());
      JList<?> list = (JList<?>) driver.named("book.list");
      assertEquals(1, list.getModel().getSize());
      assertTrue(list.getModel().getElementAt(0).toString().contains("Quick Gate"));
      driver.shot("book");
      driver.click(driver.named("book.open"));
      driver.until("where the report is", 10, () -> message(driver).contains("report.html"));

      driver.click(driver.named("book.forget"));
      driver.shot("book-delete");
      driver.click(driver.named("book.forget.no"));
      driver.until("nothing is gone", 10, () -> driver.find("book.forget").isPresent());
      assertEquals(1, takes());
      driver.click(driver.named("book.forget"));
      driver.click(driver.named("book.forget.yes"));
      driver.until(
          "Mira is gone", 10, () -> message(driver).equals("Mira is deleted. Takes that went: 1."));
      assertEquals(0, takes());
      assertFalse(driver.desk().preferences().text("student").isPresent());
    }
  }

  private static String chosen(WindowDriver driver) {
    return driver.find("book.who").map(c -> ((JComboBox<?>) c).getSelectedItem()).orElse("") + "";
  }

  private static String message(WindowDriver driver) {
    return ((Prose) driver.desk().message()).text();
  }

  private long takes() throws Exception {
    try (Stream<Path> takes = Files.list(folder.resolve("takes"))) {
      return takes.filter(Files::isDirectory).count();
    }
  }
}
