package holdfast.listening.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The truth of every delay here is known, because the test itself delays the sound. */
class CalibrationTest {

  private static final Instant NOON = Instant.parse("2026-05-01T12:00:00Z");

  @TempDir Path folder;

  @Test
  void a_chirp_is_found_to_the_sample_under_noise_as_loud_as_itself() {
    float[] chirp = Chirp.samples(48_000);
    float[] recording = new float[72_000];
    Random random = new Random(5);
    for (int i = 0; i < recording.length; i++) {
      recording[i] = (float) (0.1 * random.nextGaussian());
    }
    for (int i = 0; i < chirp.length; i++) {
      recording[12_345 + i] -= 0.3f * chirp[i];
    }
    assertEquals(12_345, Chirp.find(recording, 48_000).orElseThrow(), 1);
  }

  @Test
  void noise_alone_holds_no_chirp() {
    float[] recording = new float[72_000];
    Random random = new Random(6);
    for (int i = 0; i < recording.length; i++) {
      recording[i] = (float) (0.1 * random.nextGaussian());
    }
    assertEquals(OptionalDouble.empty(), Chirp.find(recording, 48_000));
    assertEquals(OptionalDouble.empty(), Chirp.find(new float[72_000], 48_000));
  }

  @Test
  void what_is_stored_for_a_pair_of_devices_comes_back() throws IOException {
    Calibration made =
        new Calibration(
            "Speakers [hw:0]", "Mic é/1", 0.0425, new Levels(-20, -60), -12.5, 57, 74, NOON);
    made.store(folder);
    assertEquals(Optional.of(made), Calibration.stored(folder, "Speakers [hw:0]", "Mic é/1"));
    assertEquals(Optional.empty(), Calibration.stored(folder, "Speakers [hw:0]", "Mic e/1"));
  }

  @Test
  void stale_and_impossible_values_are_noticed() throws IOException {
    Calibration made = new Calibration("a", "b", 0.04, new Levels(-20, -60), 0, 57, 74, NOON);
    assertTrue(made.isStale(NOON.plus(Duration.ofDays(90))));
    made.store(folder);
    Path file = Calibration.file(folder, "a", "b");
    Files.writeString(file, Files.readString(file).replace("0.040000", "7"));
    UserMistake told = assertThrows(UserMistake.class, () -> Calibration.stored(folder, "a", "b"));
    assertEquals(
        file
            + " is spoilt (a delay must be 0 to 1 second, not 7.0; calibrate again); delete it and"
            + " run: holdfast calibrate",
        told.getMessage());
  }

  @Test
  void every_profile_that_ships_can_be_read_and_gives_each_value_its_reason() throws IOException {
    for (String name : Profile.names()) {
      Profile profile = Profile.named(name);
      assertTrue(profile.lowestHz() < profile.highestHz());
      try (var in = Profile.class.getResourceAsStream("/calibration/" + name + ".profile")) {
        new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8)
            .lines()
            .filter(line -> !line.startsWith("#") && line.contains("="))
            .forEach(line -> assertTrue(line.matches(".*=.*#.{5,}"), name + ": " + line));
      }
    }
  }

  private static Calibration measured(Instant when) {
    return new Calibration(
        "a", "b", 0.04, new Levels(-20, -60), 0, 57, 74, when, Calibration.Way.LOOP, 48_000);
  }

  @Test
  void a_measurement_that_is_as_good_as_new_draws_no_word() {
    assertEquals(Optional.empty(), measured(NOON).complaint(NOON, 48_000));
    assertEquals(Optional.empty(), measured(NOON).complaint(NOON.plus(Duration.ofDays(60)), 0));
  }

  @Test
  void what_is_old_or_of_another_rate_or_of_a_day_to_come_is_told_with_what_to_do() {
    assertEquals(
        "It is 90 days ago that this microphone was measured; measure it again: holdfast"
            + " calibrate.",
        measured(NOON).complaint(NOON.plus(Duration.ofDays(90)), 48_000).orElseThrow());
    assertEquals(
        "The microphone was measured at 48000 Hz and runs at 44100 Hz now; measure it again:"
            + " holdfast calibrate.",
        measured(NOON).complaint(NOON, 44_100).orElseThrow());
    assertEquals(
        "The microphone was measured at a time that is yet to come; look at this machine's clock"
            + " and measure again: holdfast calibrate.",
        measured(NOON.plus(Duration.ofDays(3))).complaint(NOON, 48_000).orElseThrow());
  }

  /** A sine of this amplitude on A4 for a second, in a silent room of 2 s. */
  private static String adviceFor(double amplitude, long clipped, double roomDb) {
    float[] ear = new float[2 * Resampler.EAR_RATE];
    for (int i = Resampler.EAR_RATE / 2; i < 3 * Resampler.EAR_RATE / 2; i++) {
      ear[i] = (float) (amplitude * Math.sin(2 * Math.PI * 440 * i / Resampler.EAR_RATE));
    }
    SungSample sample = SungSample.of(ear, roomDb, clipped).orElseThrow();
    assertEquals(69, sample.lowest());
    assertEquals(69, sample.highest());
    return sample.advice();
  }

  @Test
  void a_microphone_that_is_set_wrong_is_told_how_and_what_to_do() {
    assertEquals("The level is good.", adviceFor(0.2, 0, -70));
    assertTrue(adviceFor(0.2, 500, -70).startsWith("The microphone was overloaded"));
    assertTrue(adviceFor(0.9, 0, -70).startsWith("That was nearly too loud"));
    assertTrue(adviceFor(0.006, 0, -90).startsWith("That was very soft"));
    assertTrue(adviceFor(0.1, 0, -35).startsWith("The room is nearly as loud as you"));
  }

  @Test
  void silence_is_no_singing() {
    assertEquals(Optional.empty(), SungSample.of(new float[2 * Resampler.EAR_RATE], -90, 0));
  }
}
