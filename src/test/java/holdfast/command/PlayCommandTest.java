package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.book.UserFolder;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.keyboard.TestCable;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.TakePart;
import holdfast.session.DemoTake;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A student's take, played in real time over the JDK's own MIDI door, through the whole live path.
 */
class PlayCommandTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** Four bars at this tempo take 12 s; there is no quicker way to live a take. */
  private static final int TEMPO = 80;

  /** Four statements of five notes. */
  private static final int NOTES = 20;

  private static final double COUNT_IN_SECONDS = 4 * 60.0 / TEMPO;

  @TempDir Path home;

  @BeforeEach
  void moveIn() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
    TestCable.plugIn();
  }

  @AfterEach
  void moveOut() {
    TestCable.pullOut();
    System.clearProperty(UserFolder.PROPERTY);
  }

  @Test
  void a_take_played_live_gets_the_verdicts_that_its_recording_gets() throws Exception {
    Thread hands = new Thread(PlayCommandTest::playTheDemoTake, "hands");
    hands.setDaemon(true);
    hands.start();

    Terminal said =
        Terminal.run(
            "play",
            "Paper Boats",
            "--input",
            TestCable.NAME,
            "--tempo",
            Integer.toString(TEMPO),
            "--bars",
            "1..4",
            "--choruses",
            "1",
            "--output",
            "no such device: the take is silent",
            "--tell",
            "phrase");

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("Your idea"), said.out());
    Path folder = onlyFolder(home.resolve("takes"));
    JsonNode live = JSON.readTree(folder.resolve("judgement.json").toFile());
    Terminal recorded =
        Terminal.run(
            "judge", folder.resolve("take.mid").toString(), "--chart", "Paper Boats", "--json");
    JsonNode again = JSON.readTree(recorded.out());
    assertTrue(live.get("phrases").size() == 4, said.out());
    assertEquals(outline(live), outline(again));
    assertTrue(Files.size(folder.resolve("report.html")) > 5_000);
  }

  @Test
  void the_demo_student_plays_over_any_chart_and_is_in_her_take_once() throws Exception {
    Terminal said =
        Terminal.run(
            "play",
            "Slow Ferry",
            "--demo",
            "--tempo",
            "99",
            "--bars",
            "1..2",
            "--choruses",
            "1",
            "--count-in",
            "0",
            "--output",
            "no such device: the take is silent",
            "--tell",
            "phrase");

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I listen to Mira, our demo student."), said.out());
    Path folder = onlyFolder(home.resolve("takes"));
    JsonNode judged = JSON.readTree(folder.resolve("judgement.json").toFile());
    assertEquals(2, judged.get("phrases").size(), said.out());
    // What sounds as a line over the backing is what the player plays: it is kept as that, alone.
    List<String> parts =
        MidiTakeFile.read(folder.resolve("take.mid")).parts().stream().map(TakePart::name).toList();
    assertEquals(List.of("Player", "Chords", "Bass", "Time"), parts);
  }

  @Test
  void a_keyboard_can_be_sounded_while_it_is_listened_to() throws Exception {
    Thread hands =
        new Thread(
            () -> {
              while (!TestCable.isListenedTo()) {
                LockSupport.parkNanos(1_000_000);
              }
              for (int pitch : new int[] {60, 63, 67, 65}) {
                TestCable.send(0x90, pitch, 80);
                LockSupport.parkNanos(200_000_000);
                TestCable.send(0x80, pitch, 0);
              }
            },
            "hands");
    hands.setDaemon(true);
    hands.start();

    Terminal said =
        Terminal.run(
            "play",
            "Slow Ferry",
            "--input",
            TestCable.NAME,
            "--sound-me",
            "--tempo",
            "120",
            "--bars",
            "1..1",
            "--choruses",
            "1",
            "--count-in",
            "0",
            "--output",
            "no such device: the take is silent");

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I listen to Test Keys."), said.out());
    assertTrue(said.out().contains("Your idea"), said.out());
  }

  /** What is said of each phrase, by the words that a player reads. */
  private static List<String> outline(JsonNode judged) {
    List<String> outline = new ArrayList<>();
    for (JsonNode phrase : judged.get("phrases")) {
      outline.add(
          phrase.get("bar")
              + " "
              + phrase.get("treatment").asText()
              + " "
              + phrase.get("notes").size()
              + " notes, "
              + phrase.at("/fit/word").asText());
    }
    return outline;
  }

  private static void playTheDemoTake() {
    // The hands count themselves in: they start when the cable is open and keep their own tempo,
    // a little off the backing's as a person's would be.
    long open = System.nanoTime();
    while (!TestCable.isListenedTo() && System.nanoTime() - open < 10_000_000_000L) {
      LockSupport.parkNanos(1_000_000);
    }
    long zero = System.nanoTime() + (long) (COUNT_IN_SECONDS * 1e9);
    List<PlayEvent> events =
        Heard.recording(DemoTake.shipped().played(TempoMap.steady(TEMPO)).subList(0, NOTES))
            .events();
    for (PlayEvent event : events) {
      long at = zero + (long) (event.seconds() * 1e9);
      while (System.nanoTime() < at) {
        LockSupport.parkNanos(at - System.nanoTime());
      }
      if (event instanceof PlayEvent.NoteOn on) {
        TestCable.send(0x90, on.pitch(), (int) Math.max(1, Math.rint(on.loudness() * 127)));
      } else {
        TestCable.send(0x80, event.pitch(), 0);
      }
    }
  }

  private static Path onlyFolder(Path takes) throws IOException {
    try (Stream<Path> inside = Files.list(takes)) {
      List<Path> all = inside.toList();
      assertEquals(1, all.size(), all.toString());
      return all.get(0);
    }
  }
}
