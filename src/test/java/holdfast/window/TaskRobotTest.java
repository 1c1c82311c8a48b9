package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.backing.Feel;
import holdfast.book.TakeFolder;
import holdfast.book.assignment.Answer;
import holdfast.book.assignment.Assignment;
import holdfast.chart.ChartText;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.IdeaNotation;
import holdfast.window.book.OverviewPage;
import holdfast.window.part.Prose;
import holdfast.window.play.PlayPage;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.ZipFile;
import javax.swing.JComboBox;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An assignment goes out, is played in the real window, comes back and stands in the overview. */
class TaskRobotTest {

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
  void an_assignment_is_played_its_answer_lies_beside_it_and_the_class_page_is_made()
      throws Exception {
    Path school = Files.createDirectories(folder.resolve("school"));
    Path file = school.resolve("week3.carry");
    new Assignment(
            "week-three",
            ChartText.parse(QUICK, "quick"),
            Feel.PLAIN,
            200,
            2,
            Optional.of(IdeaNotation.parse("E4 G4 A4 G4")),
            Optional.empty(),
            "Sing it first.")
        .write(file);
    TestCable.plugIn();
    Preferences mira =
        Preferences.usual()
            .with("language", "english")
            .with("ask-feeling", false)
            .with("student", "Mira");
    try (WindowDriver driver = WindowDriver.open(folder, 1200, 760, mira)) {
      driver.tell(() -> driver.desk().openTask(file));
      assertEquals(
          "Quick Gate at 200 beats a minute, 2 times round.",
          ((Prose) driver.named("task.how")).text());
      driver.shot("task");
      driver.click(driver.named("task.start"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
      PlayPage page = driver.desk().playing().orElseThrow();
      for (int i = 0; i < 12 && page.phrases().isEmpty() && driver.desk().isPlaying(); i++) {
        for (int pitch : new int[] {64, 67, 69, 67}) {
          TestCable.send(NOTE_ON, pitch, 90);
          Thread.sleep(150);
          TestCable.send(NOTE_OFF, pitch, 0);
        }
        Thread.sleep(800);
      }
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
      Path answer = school.resolve("Mira_week3.carried");
      driver.until("the answer is packed", 10, () -> Files.exists(answer));
      assertTrue(((Prose) driver.desk().message()).text().contains("Mira_week3.carried"));
      assertEquals(
          Optional.of("week-three"),
          Answer.unpack(answer, Files.createDirectory(folder.resolve("back")))
              .settings()
              .assignment());

      driver.tell(() -> driver.desk().go(Desk.CLASS));
      driver.tell(() -> ((OverviewPage) driver.desk().shown().orElseThrow()).judge(school));
      driver.until("the overview is made", 30, () -> driver.named("class.page").isEnabled());
      driver.shot("class");
      assertEquals(
          "New files: 1. Takes in the overview: 1.", ((Prose) driver.named("class.state")).text());
      assertTrue(Files.readString(school.resolve("overview/class.html")).contains("Mira"));

      try (ZipFile zip = new ZipFile(answer.toFile())) {
        Files.copy(
            zip.getInputStream(zip.getEntry(TakeFolder.MIDI)), school.resolve("Ilko_week3.mid"));
      }
      OverviewPage overview = (OverviewPage) driver.desk().shown().orElseThrow();
      driver.tell(() -> overview.judge(school));
      driver.until("it is not judged", 30, () -> state(driver).contains("not be judged: 1"));
      JComboBox<?> over = (JComboBox<?>) driver.named("class.chart");
      driver.tell(() -> over.setSelectedItem("Paper Boats"));
      driver.tell(() -> overview.judge(school));
      driver.until(
          "it is", 30, () -> state(driver).equals("New files: 1. Takes in the overview: 2."));
      driver.shot("class-with-files");
    }
  }

  private static String state(WindowDriver driver) {
    return ((Prose) driver.named("class.state")).text();
  }
}
