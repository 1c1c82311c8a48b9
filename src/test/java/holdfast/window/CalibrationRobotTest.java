package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.backing.sound.OutputLatencies;
import holdfast.backing.sound.OutputLine;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.microphone.TestMicrophone;
import holdfast.window.part.Prose;
import java.awt.GraphicsEnvironment;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.SourceDataLine;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Delay, level and range are measured in the window through the machine's devices, as far as what
 * is kept. Needs the loop that {@code .ci/audio-loop} makes.
 */
class CalibrationRobotTest {

  private static final int RATE = 44_100;

  /** In half steps from middle C; sung from the lowest to the highest. */
  private static final int LOWEST = 55;

  private static final int HIGHEST = 67;

  /** The loop's own buffers are shorter than this; a measured delay is longer than nothing. */
  private static final double LONGEST_DELAY_SECONDS = 1;

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display_and_a_loop() {
    assumeFalse(GraphicsEnvironment.isHeadless(), "there is no DISPLAY here; start an Xvfb");
    assumeTrue(
        System.getenv("HOLDFAST_AUDIO_LOOP") != null,
        "skipped: no audio loop; source .ci/audio-loop and call audio_loop_start");
  }

  @Test
  void delay_and_voice_are_measured_and_kept_for_these_devices() throws Exception {
    try (WindowDriver driver =
        WindowDriver.open(folder, 1200, 760, Preferences.usual().with("language", "english"))) {
      driver.tell(() -> driver.desk().go(Desk.SETTINGS));
      driver.click(driver.named("settings.measure"));
      driver.click(driver.named("calibrate.sing"));
      driver.until(
          "it asks for the delay first",
          20,
          () -> text(driver, "calibrate.voice").equals("Measure the delay first, above."));

      driver.click(driver.named("calibrate.chirps"));
      driver.until(
          "the delay is measured", 40, () -> text(driver, "calibrate.delay").contains("Measured:"));
      driver.shot("calibrated-delay");
      assertTrue(
          text(driver, "calibrate.delay")
              .matches("Measured: from loudspeaker to ear \\d+ milliseconds\\..*"),
          text(driver, "calibrate.delay"));

      driver.click(driver.named("calibrate.sing"));
      Thread voice = new Thread(CalibrationRobotTest::sing);
      driver.until("it listens", 20, () -> text(driver, "calibrate.voice").startsWith("Now: low"));
      voice.start();
      driver.until("it is sung", 30, () -> text(driver, "calibrate.voice").startsWith("From "));
      voice.join();
      driver.shot("calibrated");
      assertTrue(
          text(driver, "calibrate.voice").startsWith("From G up to G, 12 half steps."),
          text(driver, "calibrate.voice"));

      String output = OutputLine.open(Optional.empty(), 250).map(CalibrationRobotTest::name).get();
      String input =
          driver.desk().devices().input(holdfast.window.play.TakeRequest.Who.VOICE).name();
      Calibration kept =
          Calibration.stored(folder.resolve("calibration"), output, input).orElseThrow();
      assertTrue(
          kept.delaySeconds() > 0 && kept.delaySeconds() < LONGEST_DELAY_SECONDS, kept.toString());
      assertEquals(LOWEST, kept.lowest());
      assertEquals(HIGHEST, kept.highest());
      assertTrue(
          OutputLatencies.read(folder.resolve("output-latency.properties")).nanos(output) > 0,
          "the backing knows of the delay, too");
    }
  }

  private static String name(OutputLine.Open open) {
    open.line().close();
    return open.name();
  }

  private static String text(WindowDriver driver, String name) {
    return ((Prose) driver.named(name)).text();
  }

  /** A scale out of the loudspeaker, which the loop leads to the microphone. */
  private static void sing() {
    AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
    try (SourceDataLine speaker = AudioSystem.getSourceDataLine(format)) {
      speaker.open(format);
      speaker.start();
      for (int pitch = LOWEST; pitch <= HIGHEST; pitch++) {
        float[] tone = TestMicrophone.tone(pitch, 0.45, RATE, 0.3);
        ByteBuffer bytes = ByteBuffer.allocate(2 * tone.length).order(ByteOrder.LITTLE_ENDIAN);
        for (float sample : tone) {
          bytes.putShort((short) Math.round(sample * Short.MAX_VALUE));
        }
        speaker.write(bytes.array(), 0, bytes.capacity());
      }
      speaker.drain();
    } catch (javax.sound.sampled.LineUnavailableException e) {
      throw new IllegalStateException(e);
    }
  }
}
