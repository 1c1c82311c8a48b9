package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.book.UserFolder;
import holdfast.listening.BusyMachine;
import holdfast.listening.microphone.TestLoudspeaker;
import holdfast.listening.microphone.TestMicrophone;
import holdfast.session.input.MicrophoneInput;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a singer meets in the terminal, in real time, with a microphone that can be pulled out. */
class MicrophoneCommandsTest {

  private static final AudioFormat FORMAT = new AudioFormat(44_100, 16, 1, true, false);
  private static final int PIECE = 441;

  /** A machine that is too busy to keep time measures itself, not us; then once more. */
  private static final int TRIES = 3;

  @TempDir Path home;

  private volatile boolean enough;

  @BeforeEach
  void moveIn() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
    TestMicrophone.plugIn(FORMAT);
  }

  @AfterEach
  void moveOut() {
    enough = true;
    TestMicrophone.pullOut();
    System.clearProperty(UserFolder.PROPERTY);
  }

  @Test
  void a_singer_whose_microphone_goes_away_in_mid_take_sings_on_when_it_is_back() throws Exception {
    // Bars last 1.6 s at 150 beats a minute; the first one counts in.
    Thread singer =
        new Thread(
            () -> {
              awaitListener();
              quiet(3.0);
              phrase(60);
              quiet(1.2);
              TestMicrophone.pullOut();
              LockSupport.parkNanos(300_000_000);
              TestMicrophone.plugIn(FORMAT);
              quiet(1.5);
              phrase(60);
              while (!enough) {
                quiet(0.1);
              }
            },
            "singer");
    singer.setDaemon(true);
    singer.start();

    Terminal said =
        Terminal.run(
            "play",
            "--microphone",
            "Paper Boats",
            "--tempo",
            "150",
            "--bars",
            "1..4",
            "--choruses",
            "3",
            "--count-in",
            "1",
            "--headphones",
            "--output",
            "no such device: the take is silent",
            "--tell",
            "phrase");
    enough = true;

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I listen to"), said.out());
    assertTrue(said.out().contains(MicrophoneInput.STAYS_HERE), said.out());
    assertTrue(said.out().contains(MicrophoneInput.VOICE), said.out());
    assertFalse(said.out().contains("take the backing out"), "headphones: " + said.out());
    assertTrue(said.out().contains("The input went away"), said.out());
    assertTrue(said.out().contains("The input is back"), said.out());
    Path take = take();
    JsonNode judgement = new ObjectMapper().readTree(take.resolve("judgement.json").toFile());
    assertEquals(2, judgement.get("phrases").size(), said.out());
    assertTrue(seconds(take.resolve("take.wav")) > 3, "the sound before");
    assertTrue(seconds(take.resolve("take-2.wav")) > 2, "and after");
    assertTrue(Files.exists(take.resolve("report.html")));
  }

  @Test
  void what_a_microphone_hears_is_said_note_by_note() {
    Thread singer =
        new Thread(
            () -> {
              awaitListener();
              quiet(0.3);
              phrase(69);
              while (!enough) {
                quiet(0.1);
              }
            },
            "singer");
    singer.setDaemon(true);
    singer.start();
    Terminal said = Terminal.run("listen", "--live", TestMicrophone.NAME, "--seconds", "3");
    enough = true;
    assertEquals(0, said.exitCode(), said.err());
    List<String> notes = said.out().lines().filter(line -> line.contains("cents")).toList();
    assertEquals(4, notes.size(), said.out());
    assertTrue(notes.get(0).matches(" *[0-9.]+ s  A4 +[+-][0-9] cents +-[0-9]+ dB  0[.]\\d+ s"));
  }

  @Test
  void what_calibrate_measures_of_a_pair_of_devices_is_what_play_goes_by() {
    TestLoudspeaker.plugIn();
    try {
      Terminal before = playOnTheLoudspeaker();
      assertTrue(before.out().contains("not measured yet"), before.out());
      Terminal measured = calibrate();
      for (int again = 1; again < TRIES && measured.exitCode() != 0; again++) {
        measured = calibrate();
      }
      BusyMachine.excuse(measured.exitCode() == 0, measured.err());
      Terminal after = playOnTheLoudspeaker();
      assertFalse(after.out().contains("not measured yet"), measured.out() + after.out());
    } finally {
      TestLoudspeaker.pullOut();
    }
  }

  private static Terminal calibrate() {
    return Terminal.run(
        "calibrate",
        "--microphone",
        TestMicrophone.NAME,
        "--output",
        TestLoudspeaker.NAME,
        "--sing-seconds",
        "0");
  }

  private static Terminal playOnTheLoudspeaker() {
    Terminal said =
        Terminal.run(
            "play",
            "Paper Boats",
            "--microphone",
            TestMicrophone.NAME,
            "--output",
            TestLoudspeaker.NAME,
            "--tempo",
            "200",
            "--bars",
            "1..1",
            "--choruses",
            "1",
            "--count-in",
            "1");
    assertEquals(0, said.exitCode(), said.err());
    return said;
  }

  @Test
  void a_microphone_that_is_not_there_ends_the_command_before_anything_sounds() {
    Terminal said = Terminal.run("play", "Paper Boats", "--microphone", "silver bullet");
    assertEquals(2, said.exitCode());
    assertTrue(said.err().contains("there is no microphone \"silver bullet\"; there"), said.err());
    assertFalse(Files.exists(home.resolve("takes")) && !list(home.resolve("takes")).isEmpty());
  }

  private static void awaitListener() {
    while (!TestMicrophone.isListenedTo()) {
      LockSupport.parkNanos(1_000_000);
    }
  }

  /** Four notes: up a third, up a tone, and back. */
  private static void phrase(int lowest) {
    for (int steps : new int[] {0, 4, 6, 4}) {
      say(TestMicrophone.tone(lowest + steps, 0.3, FORMAT.getSampleRate(), 0.3));
      quiet(0.06);
    }
  }

  private static void quiet(double seconds) {
    say(new float[(int) (seconds * FORMAT.getSampleRate())]);
  }

  /** Sound comes as it does from a real device: no faster than it lasts. */
  private static void say(float[] samples) {
    long start = System.nanoTime();
    for (int from = 0; from < samples.length; from += PIECE) {
      float[] piece =
          java.util.Arrays.copyOfRange(samples, from, Math.min(samples.length, from + PIECE));
      TestMicrophone.sing(piece);
      long due = start + Math.round((from + piece.length) * 1e9 / FORMAT.getSampleRate());
      while (System.nanoTime() < due) {
        LockSupport.parkNanos(due - System.nanoTime());
      }
    }
  }

  private Path take() {
    List<Path> takes = list(home.resolve("takes")).stream().filter(Files::isDirectory).toList();
    assertEquals(1, takes.size());
    return takes.get(0);
  }

  private static List<Path> list(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static double seconds(Path wave) throws Exception {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wave.toFile())) {
      return in.getFrameLength() / in.getFormat().getFrameRate();
    }
  }
}
