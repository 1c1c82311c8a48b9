package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.listening.keyboard.TestCable;
import holdfast.window.part.Prose;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.swing.JComboBox;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ideas are invented in the real window, and one of them is carried on. */
class InventRobotTest {

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

  /** Plays it, and waits until it has been told what it is. */
  private static void play(WindowDriver driver, String told, int... pitches) throws Exception {
    for (int pitch : pitches) {
      TestCable.send(NOTE_ON, pitch, 90);
      Thread.sleep(220);
      TestCable.send(NOTE_OFF, pitch, 0);
    }
    driver.until(told, 15, () -> said(driver, "invent.said").startsWith(told));
  }

  private static String tile(WindowDriver driver, int number) {
    return driver.named("invent.tile" + number).getAccessibleContext().getAccessibleName();
  }

  private static String said(WindowDriver driver, String name) {
    return ((Prose) driver.named(name)).text();
  }

  @Test
  void the_same_again_in_other_clothes_counts_once_and_an_idea_is_carried_on() throws Exception {
    TestCable.plugIn();
    Preferences english = Preferences.usual().with("language", "english");
    try (WindowDriver driver = WindowDriver.open(folder, 1200, 760, english)) {
      driver.tell(() -> driver.desk().go(Desk.WAYS));
      driver.click(driver.named("invent.open"));
      assertEquals(Desk.INVENT, driver.desk().current());
      JComboBox<?> chords = (JComboBox<?>) driver.named("invent.chords");
      driver.tell(() -> chords.setSelectedItem("Hm"));
      driver.click(driver.named("invent.start"));
      assertTrue(driver.named("invent.chords").isEnabled(), "no chord, no session");
      driver.tell(() -> chords.setSelectedItem("Dm7"));
      driver.click(driver.named("invent.start"));
      driver.until("the keyboard is listened to", 10, TestCable::isListenedTo);
      play(driver, "Number 1, your first idea.", 62, 65, 69, 67);
      play(driver, "Number 2 is number 1 again, in a higher octave", 74, 77, 81, 79);
      play(driver, "Number 3 is new", 72, 71, 69, 64, 60);
      assertEquals("2 really different of 3", said(driver, "invent.count"));
      assertEquals("idea 1: D F A G", tile(driver, 1));
      assertEquals("idea 3: C B A E C; new: rhythm, shape, range, start", tile(driver, 3));
      driver.click(driver.named("invent.starter"));
      driver.until("a starter", 10, () -> !said(driver, "invent.said").startsWith("Number"));
      driver.shot("invent");

      driver.click(driver.named("invent.carry3"));
      driver.until("it is carried on", 20, () -> driver.desk().isPlaying());
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
      assertEquals(60, lastPitch(driver), "the idea of the take is the one that was chosen");
      // Not a walk: the take that has just ended is still being written beside it.
      try (var takes = Files.list(folder.resolve("takes"))) {
        assertEquals(1, takes.filter(t -> Files.exists(t.resolve("invented.json"))).count());
      }
    }
  }

  private static int lastPitch(WindowDriver driver) {
    var notes =
        driver.desk().lastTake().orElseThrow().judged().setting().givenIdea().orElseThrow().notes();
    return notes.get(notes.size() - 1).pitch();
  }
}
