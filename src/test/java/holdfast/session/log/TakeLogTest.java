package holdfast.session.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import holdfast.listening.midi.TakePart.PedalMove;
import holdfast.mistake.UserMistake;
import holdfast.time.TempoMap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nothing that was played is lost, wherever the log breaks off. */
class TakeLogTest {

  private static final TempoMap TEMPO =
      new TempoMap(List.of(new TempoMap.Point(0, 0, 60), new TempoMap.Point(8, 8, 66.6)));

  @TempDir Path folder;

  @Test
  void a_whole_take_comes_back_as_it_was() throws IOException {
    Path file = write("take.log");
    LoggedTake take = LoggedTake.recover(file);
    assertTrue(take.isWhole());
    assertEquals(0, take.brokenLines());
    assertEquals(List.of("chart", "words"), List.copyOf(take.settings().keySet()));
    assertEquals("Slow Ferry: bars 1\nto 4 = \\all", take.settings().get("chart"));
    assertEquals("later", take.settings().get("words"));
    assertEquals(Optional.of(TEMPO), take.tempo());
    assertEquals(events(), take.events());
    assertEquals(List.of(new PedalMove(1.25, true), new PedalMove(1.5, false)), take.pedal());
    assertEquals(List.of(new LoggedTake.Mark(2.0, "new idea\nhere")), take.marks());
    assertEquals(9.5, take.heardSeconds());
  }

  @Test
  void notes_are_put_together_and_what_sounds_at_the_end_ends_there() throws IOException {
    Path file = folder.resolve("take.log");
    TakeLog log = TakeLog.start(file, Map.of());
    log.hear(new Heard(List.of(NoteOn.key(1, 60, 80), new NoteOff(2, 60)), 2));
    log.hear(new Heard(List.of(NoteOn.key(3, 62, 90)), 3));
    log.phraseEnded(4.5);
    log.close();
    assertEquals(
        List.of(PlayedNote.key(1, 1, 60, 80), PlayedNote.key(3, 1.5, 62, 90)),
        LoggedTake.recover(file).notes());
  }

  @Test
  void a_log_that_is_cut_at_any_byte_gives_every_event_before_the_cut() throws IOException {
    Path file = write("take.log");
    byte[] whole = Files.readAllBytes(file);
    Path cut = folder.resolve("cut.log");
    for (int length = 0; length <= whole.length; length++) {
      byte[] rest = Arrays.copyOf(whole, length);
      Files.write(cut, rest);
      LoggedTake take = LoggedTake.recover(cut);
      String text = new String(rest, StandardCharsets.UTF_8);
      String lines = text.substring(0, text.lastIndexOf('\n') + 1);
      long events = lines.lines().filter(l -> l.matches("\\w{8} (on|off) .*")).count();
      assertEquals(events().subList(0, (int) events), take.events(), "cut at " + length);
      assertEquals(text.length() == lines.length() ? 0 : 1, take.brokenLines());
      assertEquals(length == whole.length, take.isWhole());
    }
  }

  @Test
  void a_byte_that_is_damaged_costs_no_more_than_its_line() throws IOException {
    byte[] whole = Files.readAllBytes(write("take.log"));
    Path damaged = folder.resolve("damaged.log");
    for (int at = 0; at < whole.length; at++) {
      byte[] bytes = whole.clone();
      bytes[at] ^= 0x10;
      Files.write(damaged, bytes);
      LoggedTake take = LoggedTake.recover(damaged);
      // A damaged line feed joins two lines.
      assertTrue(take.events().size() >= events().size() - 2, "damaged at " + at);
      assertTrue(events().containsAll(take.events()), "damaged at " + at);
      assertTrue(take.brokenLines() >= 1, "damaged at " + at);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 17, 333, 2000})
  void a_killed_program_loses_nothing_that_it_had_heard(int notes) throws Exception {
    Path file = folder.resolve("take.log");
    Process child =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElseThrow(),
                "-cp",
                System.getProperty("java.class.path"),
                LoggingChild.class.getName(),
                file.toString())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    int said = 0;
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(child.getInputStream(), StandardCharsets.US_ASCII))) {
      while (said < notes) {
        String line = out.readLine();
        assertTrue(line != null, () -> "the child died early; see err.txt");
        said = Integer.parseInt(line);
      }
      assertEquals(List.of(), BrokenOffTakes.in(folder, ".log"), "it is still being written");
      child.destroyForcibly();
      child.waitFor();
    }
    assertEquals(List.of(file), BrokenOffTakes.in(folder, ".log"));
    LoggedTake take = LoggedTake.recover(file);
    assertFalse(take.isWhole());
    assertTrue(take.brokenLines() <= 1);
    assertEquals("Slow Ferry", take.settings().get("chart"));
    assertTrue(take.events().size() >= 2 * said, "said " + said + ", kept " + take.events().size());
    for (int i = 0; i < take.events().size(); i++) {
      double second = i * 0.5;
      assertEquals(second, take.events().get(i).seconds());
      assertEquals(48 + i / 2 % 24, take.events().get(i).pitch());
    }
  }

  @Test
  void an_interrupted_session_goes_on_logging() {
    Path file = folder.resolve("take.log");
    TakeLog log = TakeLog.start(file, Map.of());
    Thread.currentThread().interrupt();
    log.hear(new Heard(events(), 3));
    log.phraseEnded(3);
    log.close();
    assertTrue(Thread.interrupted(), "the interruption is handed on");
    assertEquals(Optional.empty(), log.trouble());
    assertEquals(events(), LoggedTake.recover(file).events());
  }

  @Test
  void a_full_disk_is_told_and_does_not_stop_the_take() throws IOException {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.exists(full), "there is no /dev/full");
    Path missing = folder.resolve("missing");
    TakeLog log = TakeLog.appendingTo(full, List.of(missing, folder));
    log.set("chart", "Slow Ferry");
    log.hear(new Heard(events(), 3));
    log.mark(4, "still here");
    assertTrue(
        log.trouble().orElseThrow().startsWith("The take's log /dev/full cannot be written"));
    log.close();
    assertEquals(folder.resolve("full"), log.whole());
    assertTrue(log.trouble().orElseThrow().contains("all of it is in " + log.whole()));
    LoggedTake kept = LoggedTake.recover(log.whole());
    assertEquals(events(), kept.events());
    assertEquals("Slow Ferry", kept.settings().get("chart"));
  }

  @Test
  void a_log_that_nothing_takes_waits_for_room_when_the_take_is_over() throws Exception {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.exists(full), "there is no /dev/full");
    Path stick = folder.resolve("stick");
    TakeLog log = TakeLog.appendingTo(full, List.of(stick));
    log.hear(new Heard(events(), 3));
    CountDownLatch closing = new CountDownLatch(1);
    Thread end =
        new Thread(
            () -> {
              closing.countDown();
              log.close();
            });
    end.start();
    closing.await();
    Files.createDirectory(stick);
    end.join();
    assertEquals(events(), LoggedTake.recover(stick.resolve("full")).events());
  }

  @Test
  void a_name_that_is_taken_and_a_file_that_is_no_log_are_told() throws IOException {
    Path file = folder.resolve("notes.log");
    Files.writeString(file, "buy strings\nand reeds\n");
    assertEquals(List.of(), BrokenOffTakes.in(folder, ".log"));
    assertEquals(
        file + " is there already; give the take another name",
        assertThrows(UserMistake.class, () -> TakeLog.start(file, Map.of())).getMessage());
    assertEquals(
        file + ", line 1: this is no log of a take; give a file that a take left behind",
        assertThrows(UserMistake.class, () -> LoggedTake.recover(file)).getMessage());
    Path missing = folder.resolve("no").resolve("take.log");
    assertEquals(
        "there is no folder for " + missing + "; make it first",
        assertThrows(UserMistake.class, () -> TakeLog.start(missing, Map.of())).getMessage());
  }

  /** The check value of CRC-32C for "123456789", from its entry in the catalogue of CRCs. */
  @Test
  void the_checksum_is_crc_32c() {
    assertEquals("e3069283 123456789\n", new LogLine("123456789", "").written());
  }

  private Path write(String name) throws IOException {
    Path file = folder.resolve(name);
    Map<String, String> settings = new LinkedHashMap<>();
    settings.put("chart", "Slow Ferry: bars 1\nto 4 = \\all");
    settings.put("words", "é♭");
    try (TakeLog log = TakeLog.start(file, settings)) {
      log.tempo(TempoMap.steady(90));
      log.tempo(TEMPO);
      log.hear(new Heard(List.of(), 0.5));
      log.hear(new Heard(events().subList(0, 3), 1));
      log.pedal(1.25, true);
      log.pedal(1.5, false);
      log.phraseEnded(1.75);
      log.mark(2.0, "new idea\nhere");
      log.hear(new Heard(events().subList(3, events().size()), 3));
      log.set("words", "later");
      log.end(9.5);
    }
    return file;
  }

  private static List<PlayEvent> events() {
    return List.of(
        new NoteOn(-0.1234567890123, 60, 12.5, 0.3, 0.875),
        new NoteOff(0.5, 60),
        NoteOn.key(1.0 / 3, 64, 100),
        new NoteOff(2.5, 64),
        NoteOn.key(2.75, 127, 1),
        new NoteOff(2.8, 127));
  }
}
