package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Profile;
import holdfast.session.Feedback;
import holdfast.window.KeyedText;
import holdfast.window.Preferences;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Set;
import org.junit.jupiter.api.Assertions;

/** Small texts of names and values: what was measured, what was chosen. */
class SettingsFuzzTest {

  private static final Instant NOW = Instant.parse("2026-11-25T12:00:00Z");

  @FuzzTest(maxDuration = "10m")
  void any_calibration(byte[] bytes) {
    String name = Calibration.file(Path.of(""), "out", "in").getFileName().toString();
    Hostile.readFolder(
        bytes,
        name,
        folder -> {
          Calibration read = Calibration.stored(folder, "out", "in").orElseThrow();
          read.complaint(NOW, 44_100);
          Assertions.assertTrue(Double.isFinite(read.outputLatencySeconds()));
          Assertions.assertTrue(Double.isFinite(read.levels().voiceDb()));
          Assertions.assertTrue(Double.isFinite(read.tuningCents()));
        });
  }

  @FuzzTest(maxDuration = "10m")
  void any_profile(byte[] bytes) {
    Hostile.read(
        bytes,
        () -> {
          Profile read = Profile.parse("x", new String(bytes, StandardCharsets.UTF_8), "x.profile");
          Assertions.assertTrue(Double.isFinite(read.gateDb()));
          return Assertions.assertDoesNotThrow(read::highestHz);
        });
  }

  @FuzzTest(maxDuration = "10m")
  void any_settings_of_the_window(byte[] bytes) {
    Hostile.readFolder(bytes, "settings.txt", SettingsFuzzTest::choose);
  }

  /** Whatever the file says, everything has a value that the window can work with. */
  private static void choose(Path folder) {
    Preferences read = new Preferences(KeyedText.read(folder.resolve("settings.txt")));
    Assertions.assertTrue(read.textPercent() >= Preferences.SMALLEST_TEXT);
    Assertions.assertTrue(read.textPercent() <= Preferences.LARGEST_TEXT);
    Assertions.assertTrue(read.volumePercent() >= 0 && read.volumePercent() <= 100);
    Assertions.assertTrue(Set.of(Feedback.values()).contains(read.feedback()));
    Assertions.assertNotNull(read.theme());
    Assertions.assertNotNull(read.language());
    Assertions.assertNotNull(read.noteNames());
    Assertions.assertNotNull(read.listening());
    Assertions.assertNotNull(read.hints());
    Assertions.assertNotNull(read.soundFont());
    try {
      // What was read can be kept, and says the same when it is read again.
      Path kept = folder.resolve("kept.txt");
      KeyedText.write(kept, "kept", read.values());
      Assertions.assertEquals(read.values(), KeyedText.read(kept));
      Files.delete(kept);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
