package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.book.TakeFolder;
import holdfast.listening.microphone.TestMicrophone;
import holdfast.window.part.Prose;
import holdfast.window.play.PlayPage;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.sound.sampled.AudioFormat;
import javax.swing.JList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A singer is heard by the real window through a microphone that a test sings into. */
class SingingRobotTest {

  private static final int RATE = 48_000;
  private static final double NOTE_SECONDS = 0.35;
  private static final double REST_SECONDS = 1.2;
  private static final int[] IDEA = {60, 64, 67, 64};

  private static final String CHART =
      "title: Quick Gate\nkey: C\ntempo: 120\n\n| Cmaj7 | Am7 | Dm7 | G7 |\n";

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display() {
    assumeFalse(GraphicsEnvironment.isHeadless(), "there is no DISPLAY here; start an Xvfb");
  }

  @AfterEach
  void pull_out() {
    TestMicrophone.pullOut();
  }

  /** Sings without end, in the time of the clock on the wall, as a singer does. */
  private static final class Singer extends Thread {
    private volatile boolean sings = true;

    @Override
    public void run() {
      try {
        while (sings) {
          for (int pitch : IDEA) {
            sing(TestMicrophone.tone(pitch, NOTE_SECONDS, RATE, 0.3));
          }
          sing(new float[(int) (REST_SECONDS * RATE)]);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    private static void sing(float[] sound) throws InterruptedException {
      int piece = RATE / 20;
      for (int from = 0; from < sound.length; from += piece) {
        TestMicrophone.sing(
            java.util.Arrays.copyOfRange(sound, from, Math.min(sound.length, from + piece)));
        Thread.sleep(50);
      }
    }
  }

  @Test
  void a_singer_is_heard_judged_and_kept_with_the_sound() throws Exception {
    Files.createDirectories(folder.resolve("charts"));
    Files.writeString(folder.resolve("charts/quick-gate.txt"), CHART);
    TestMicrophone.plugIn(new AudioFormat(RATE, 16, 1, true, false));
    Preferences singer =
        Preferences.usual()
            .with("language", "english")
            .with("microphone", TestMicrophone.NAME)
            .with("headphones", true)
            .with("ask-feeling", false);
    Singer voice = new Singer();
    try (WindowDriver driver = WindowDriver.open(folder, 1200, 760, singer)) {
      driver.click(driver.named("home.sing"));
      driver.until("the microphone is listened to", 10, TestMicrophone::isListenedTo);
      voice.start();
      driver.until(
          "the light says so",
          15,
          () ->
              WindowDriver.all(driver.window().frame()).stream()
                  .anyMatch(
                      c ->
                          c instanceof Prose prose
                              && prose.text().equals("I hear you. The input is fine.")));
      driver.shot("check-singing");
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      JList<?> list = (JList<?>) driver.named("charts.list");
      driver.tell(() -> list.setSelectedValue("Quick Gate", true));
      driver.click(driver.named("charts.play"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      PlayPage page = driver.desk().playing().orElseThrow();
      driver.until("two phrases are judged", 40, () -> page.phrases().size() >= 2);
      driver.shot("singing");
      driver.press(KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
      TakeFolder take = driver.desk().lastTake().orElseThrow().folder().orElseThrow();
      assertTrue(
          Files.size(take.path().resolve(TakeFolder.RECORDING)) > 2 * RATE,
          "more than a second of sound is kept");
    } finally {
      voice.sings = false;
      voice.join();
    }
  }
}
