package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.disk.WholeFile;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.mistake.UserMistake;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import holdfast.session.log.LoggedTake;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real disk, a small one in memory, that is filled up or locked while a take is kept on it. */
class FullDiskTest {

  private static final List<PlayEvent> PLAYED = Heard.recording(MadeTakes.notes()).events();

  @TempDir Path folder;

  private final String home = System.getProperty("user.home");
  private Path disk;

  @BeforeEach
  void mount() throws Exception {
    System.setProperty("user.home", folder.toString());
    disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(
        done("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", disk.toString()),
        "skipped: only root of Linux can make a small disk");
  }

  @AfterEach
  void unmount() throws Exception {
    System.setProperty("user.home", home);
    done("umount", disk.toString());
  }

  @Test
  void a_take_goes_on_while_the_disk_is_full_and_is_whole_when_there_is_room() throws Exception {
    try (KeptTake take = begin()) {
      take.hear(piece(0, 10));
      Path filler = fill();
      // More than fits into the page that is begun.
      take.hear(piece(10, 140));
      assertTrue(take.trouble().orElseThrow().contains("make room on the disk"));
      take.hear(piece(140, 150));
      Files.delete(filler);
      take.hear(piece(150, PLAYED.size()));
      assertEquals(Optional.empty(), take.trouble());
      assertEquals(PLAYED, logged());
      take.finish(judged(), Optional.empty());
      assertEquals(judged().phrases().size(), take.folder().judged().phrases().size());
    }
  }

  @Test
  void a_take_that_ends_on_a_full_disk_is_told_and_its_log_stays() throws Exception {
    try (KeptTake take = begin()) {
      take.hear(piece(0, PLAYED.size()));
      Path filler = fill();
      UserMistake full =
          assertThrows(UserMistake.class, () -> take.finish(judged(), Optional.empty()));
      assertTrue(full.getMessage().contains("make room"), full.getMessage());
      assertTrue(full.getMessage().contains("No space left on device"), full.getMessage());
      Files.delete(filler);
    }
    assertEquals(PLAYED, logged());
  }

  @Test
  void what_was_played_while_the_disk_was_full_to_the_end_is_kept_elsewhere_and_finished_later()
      throws Exception {
    try (KeptTake take = begin()) {
      take.hear(piece(0, 10));
      Path filler = fill();
      take.hear(piece(10, PLAYED.size()));
      UserMistake full =
          assertThrows(UserMistake.class, () -> take.finish(judged(), Optional.empty()));
      Path rescued = folder.resolve(take.folder().path().getFileName() + ".log");
      assertTrue(full.getMessage().contains("all of it is in " + rescued), full.getMessage());
      assertTrue(full.getMessage().contains("make room"), full.getMessage());
      assertEquals(PLAYED, LoggedTake.recover(rescued).events());
      Files.delete(filler);
      Path takes = disk.resolve(Book.TAKES);
      // As if the program that wrote it were gone.
      List<String> lines = Files.readAllLines(rescued);
      lines.removeIf(line -> line.contains(" take-log "));
      Files.write(takes.resolve(rescued.getFileName()), lines);
      Unfinished.finish(takes);
      assertEquals(judged().phrases().size(), take.folder().judged().phrases().size());
    }
  }

  @Test
  void what_is_played_on_a_full_disk_stands_elsewhere_after_each_phrase_until_there_is_room()
      throws Exception {
    try (KeptTake take = begin()) {
      take.hear(piece(0, 10));
      Path filler = fill();
      Path meanwhile = folder.resolve(take.folder().path().getFileName() + ".log");
      take.hear(piece(10, 140));
      take.phraseEnded(PLAYED.get(139).seconds());
      waitFor(() -> heldIn(meanwhile) == 140);
      assertTrue(take.trouble().orElseThrow().contains("is kept in " + meanwhile));
      take.hear(piece(140, 150));
      take.phraseEnded(PLAYED.get(149).seconds());
      waitFor(() -> heldIn(meanwhile) == 150);
      Files.delete(filler);
      take.hear(piece(150, PLAYED.size()));
      assertEquals(Optional.empty(), take.trouble());
      take.finish(judged(), Optional.empty());
      assertTrue(Files.notExists(meanwhile), "no copy is left");
    }
  }

  private static int heldIn(Path log) throws IOException {
    return Files.exists(log) ? LoggedTake.recover(log).events().size() : 0;
  }

  private static void waitFor(Callable<Boolean> state) throws Exception {
    long giveUp = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (!state.call()) {
      assertTrue(System.nanoTime() < giveUp, "half a minute has passed");
      TimeUnit.MILLISECONDS.sleep(20);
    }
  }

  @Test
  void a_file_that_is_written_anew_on_a_full_disk_stays_as_it_was() throws Exception {
    Path file = Files.writeString(disk.resolve("report.html"), "old");
    Path filler = fill();
    UserMistake full =
        assertThrows(UserMistake.class, () -> WholeFile.write(file, new byte[1 << 20]));
    assertTrue(full.getMessage().contains("make room"), full.getMessage());
    assertEquals("old", Files.readString(file));
    Files.delete(filler);
    try (Stream<Path> files = Files.list(disk)) {
      assertEquals(List.of(file), files.toList());
    }
  }

  @Test
  void a_disk_that_may_only_be_read_is_told_before_anything_is_played() throws Exception {
    Path file = Files.writeString(disk.resolve("report.html"), "old");
    assumeTrue(done("mount", "-o", "remount,ro", disk.toString()));
    UserMistake told = assertThrows(UserMistake.class, this::begin);
    assertTrue(told.getMessage().contains("Read-only file system"), told.getMessage());
    assertTrue(told.getMessage().contains("HOLDFAST_HOME"), told.getMessage());
    assertThrows(UserMistake.class, () -> WholeFile.write(file, "new"));
    assertEquals("old", Files.readString(file));
  }

  private KeptTake begin() throws IOException {
    return KeptTake.begin(
        disk.resolve(Book.TAKES), MadeTakes.settings("Mira", 1), MadeTakes.PERFORMANCE);
  }

  private static JudgedTake judged() {
    return Coach.judge(MadeTakes.SETTING, MadeTakes.notes(), phrase -> {});
  }

  private static Heard piece(int from, int to) {
    List<PlayEvent> events = PLAYED.subList(from, to);
    return new Heard(events, events.get(events.size() - 1).seconds());
  }

  private List<PlayEvent> logged() throws IOException {
    try (Stream<Path> files = Files.list(disk.resolve(Book.TAKES))) {
      Path log = files.filter(f -> f.toString().endsWith(".log")).findFirst().orElseThrow();
      return LoggedTake.recover(log).events();
    }
  }

  /** Not a byte is left. */
  private Path fill() throws IOException {
    Path filler = disk.resolve("filler");
    try (OutputStream out = Files.newOutputStream(filler)) {
      while (true) {
        out.write(new byte[4096]);
      }
    } catch (IOException full) {
      return filler;
    }
  }

  private static boolean done(String... command) throws IOException, InterruptedException {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException noSuchProgram) {
      return false;
    }
  }
}
