package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.book.SelfEstimate.Feeling;
import holdfast.book.TakeFolder;
import holdfast.listening.keyboard.TestCable;
import holdfast.session.Place;
import holdfast.window.part.Prose;
import holdfast.window.play.FormSheet;
import holdfast.window.play.PlayPage;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.swing.JList;
import javax.swing.JTextArea;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real window on a real display, driven by mouse, keys and a MIDI cable. */
class WindowRobotTest {

  /** Eight bars in eight seconds. */
  private static final String QUICK =
      """
      title: Quick Gate
      key: C
      tempo: 240

      | Cmaj7 | Am7 | Dm7 | G7 |
      | Cmaj7 | Fm7 | ! Abmaj7 | G7 |
      """;

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display() {
    assumeFalse(
        GraphicsEnvironment.isHeadless(),
        "there is no DISPLAY here, so the window is not driven; start one with Xvfb");
  }

  @AfterEach
  void pull_the_cable_out() {
    TestCable.pullOut();
  }

  private WindowDriver open() throws Exception {
    Files.createDirectories(folder.resolve("charts"));
    Files.writeString(folder.resolve("charts/quick-gate.txt"), QUICK);
    return WindowDriver.open(folder, 1200, 760, Preferences.usual().with("language", "english"));
  }

  @Test
  void the_demo_is_watched_its_verdicts_are_seen_and_its_report_is_opened() throws Exception {
    try (WindowDriver driver = open()) {
      driver.shot("start");
      driver.click(driver.named("home.demo"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      driver.press(KeyEvent.VK_SPACE);
      driver.until("space stops it", 10, () -> !driver.desk().isPlaying());

      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.shot("charts");
      driver.click(driver.named("charts.demo"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      PlayPage page = driver.desk().playing().orElseThrow();
      driver.until("phrases are judged", 20, () -> page.phrases().size() >= 2);
      driver.shot("playing");
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 30, () -> !driver.desk().isPlaying());
      FormSheet sheet = (FormSheet) driver.named("after.sheet");
      Place first = driver.desk().lastTake().orElseThrow().judged().phrases().get(0).place();
      Rectangle cell = driver.ask(() -> sheet.boundsOf(first));
      driver.click(sheet, (int) cell.getCenterX(), (int) cell.getCenterY());
      Prose why = (Prose) driver.named("after.why");
      assertTrue(why.text().contains("the idea that the others are held against"), why.text());
      driver.press(KeyEvent.VK_RIGHT);
      assertFalse(why.text().contains("the idea that the others are held against"), why.text());
      driver.shot("after");
      driver.click(driver.named("after.report"));
      assertTrue(
          Files.readString(folder.resolve("reports/demo.html")).contains("Quick Gate"),
          "the report names its chart");
    }
  }

  @Test
  void a_chart_with_a_mistake_is_underlined_there_and_kept_once_it_is_mended() throws Exception {
    try (WindowDriver driver = open()) {
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.click(driver.named("charts.new"));
      JTextArea text = (JTextArea) driver.named("editor.text");
      driver.tell(() -> text.setText("title: Mended Fence\n\n| C | F7q | G |\n"));
      driver.until(
          "the mistake is underlined", 5, () -> text.getHighlighter().getHighlights().length == 1);
      Prose mistake = (Prose) driver.named("editor.mistake");
      assertTrue(mistake.text().contains("Line 3, column 7"), mistake.text());
      int from = driver.ask(() -> text.getHighlighter().getHighlights()[0].getStartOffset());
      int to = driver.ask(() -> text.getHighlighter().getHighlights()[0].getEndOffset());
      assertEquals("F7q", text.getText().substring(from, to));
      assertFalse(driver.named("editor.keep").isEnabled());
      driver.shot("editor");

      driver.tell(
          () -> {
            text.requestFocusInWindow();
            text.setCaretPosition(to);
          });
      driver.press(KeyEvent.VK_BACK_SPACE);
      driver.until("it can be kept", 5, () -> driver.named("editor.keep").isEnabled());
      driver.press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
      driver.until("undone", 5, () -> !driver.named("editor.keep").isEnabled());
      driver.press(KeyEvent.VK_CONTROL, KeyEvent.VK_Y);
      driver.until("done again", 5, () -> driver.named("editor.keep").isEnabled());
      driver.click(driver.named("editor.keep"));
      assertTrue(Files.exists(folder.resolve("charts/mended-fence.txt")));
      JList<?> list = (JList<?>) driver.named("charts.list");
      assertEquals("Mended Fence", driver.ask(list::getSelectedValue));
    }
  }

  @Test
  void a_student_at_a_keyboard_is_heard_judged_and_asked_first_how_it_felt() throws Exception {
    TestCable.plugIn();
    try (WindowDriver driver = open()) {
      driver.click(driver.named("home.keyboard"));
      driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
      TestCable.send(NOTE_ON, 60, 90);
      driver.until(
          "the light says so",
          10,
          () ->
              WindowDriver.all(driver.window().frame()).stream()
                  .anyMatch(
                      c ->
                          c instanceof Prose prose
                              && prose.text().equals("I hear you. The input is fine.")));
      TestCable.send(NOTE_OFF, 60, 0);
      driver.shot("check");
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.click(driver.named("charts.play"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      PlayPage page = driver.desk().playing().orElseThrow();
      driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
      for (int bar = 0; bar < 40 && page.phrases().size() < 2 && driver.desk().isPlaying(); bar++) {
        playIdea();
      }
      assertTrue(page.phrases().size() >= 2, "phrases: " + page.phrases().size());
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
      assertTrue(driver.find("felt.steady").isPresent(), "it asks before it tells");
      assertTrue(driver.find("after.sheet").isEmpty());
      driver.shot("felt");
      driver.press(KeyEvent.VK_3);
      assertTrue(driver.find("after.sheet").isPresent());
      assertEquals(
          Feeling.STEADY,
          driver
              .desk()
              .lastTake()
              .orElseThrow()
              .folder()
              .orElseThrow()
              .felt()
              .orElseThrow()
              .feeling());
    }
  }

  @Test
  void a_take_is_written_down_whole_when_the_window_is_closed_in_the_middle_of_it()
      throws Exception {
    TestCable.plugIn();
    WindowDriver driver = open();
    driver.tell(() -> driver.desk().go(Desk.CHARTS));
    driver.click(driver.named("charts.play"));
    driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
    PlayPage page = driver.desk().playing().orElseThrow();
    for (int i = 0; i < 20 && page.phrases().isEmpty(); i++) {
      playIdea();
    }
    driver.tell(() -> driver.window().frame().dispatchEvent(closing(driver)));
    driver.window().awaitEnd();
    Path take;
    try (Stream<Path> takes = Files.list(folder.resolve("takes"))) {
      take = takes.findFirst().orElseThrow();
    }
    assertTrue(Files.exists(take.resolve(TakeFolder.PAPER)), "the report on paper");
    assertTrue(Files.exists(take.resolve(TakeFolder.SOUND)), "the take's sound");
    assertTrue(
        Files.readString(take.resolve(TakeFolder.REPORT)).contains("<audio"), "the report sounds");
  }

  private static WindowEvent closing(WindowDriver driver) {
    return new WindowEvent(driver.window().frame(), WindowEvent.WINDOW_CLOSING);
  }

  private static void playIdea() throws InterruptedException {
    for (int pitch : new int[] {64, 67, 69, 67}) {
      TestCable.send(NOTE_ON, pitch, 90);
      Thread.sleep(110);
      TestCable.send(NOTE_OFF, pitch, 0);
    }
    Thread.sleep(800);
  }

  @Test
  void a_way_of_practising_is_started_and_says_whose_turn_it_is() throws Exception {
    TestCable.plugIn();
    try (WindowDriver driver = open()) {
      driver.tell(() -> driver.desk().go(Desk.WAYS));
      driver.shot("ways");
      driver.click(driver.named("way.guess-next"));
      driver.until("a lesson runs", 10, () -> driver.desk().isPlaying());
      driver.until(
          "the coach says whose turn it is",
          15,
          () ->
              WindowDriver.all(driver.window().frame()).stream()
                  .map(c -> String.valueOf(c.getAccessibleContext().getAccessibleName()))
                  .anyMatch(words -> words.startsWith("Listen: mine, over")));
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the lesson is over", 20, () -> !driver.desk().isPlaying());
    }
  }

  @Test
  void arrows_make_it_slower_and_faster_while_it_runs() throws Exception {
    TestCable.plugIn();
    try (WindowDriver driver = open()) {
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.click(driver.named("charts.play"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      PlayPage page = driver.desk().playing().orElseThrow();
      driver.until("it sounds", 10, () -> page.tempo().isPresent());
      driver.press(KeyEvent.VK_LEFT);
      driver.press(KeyEvent.VK_LEFT);
      driver.until("it is slower", 10, () -> page.tempo().orElse(0.0) == 232);
      driver.press(KeyEvent.VK_RIGHT);
      driver.until("it is faster", 10, () -> page.tempo().orElse(0.0) == 236);
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
    }
  }

  @Test
  void the_window_stands_where_it_stood_and_keeps_what_was_chosen() throws Exception {
    try (WindowDriver driver = open()) {
      driver.tell(
          () -> {
            driver.window().frame().setSize(1100, 700);
            driver.desk().change(driver.desk().preferences().with("theme", "dark"));
          });
    }
    MainWindow again = MainWindow.open(folder);
    try {
      assertEquals(1100, again.frame().getWidth());
      assertEquals(700, again.frame().getHeight());
      assertEquals(Preferences.Theme.DARK, again.desk().preferences().theme());
    } finally {
      javax.swing.SwingUtilities.invokeAndWait(again::close);
    }
  }
}
