package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.ChildProgram;
import holdfast.listening.PlayedNote;
import holdfast.report.PlanJson;
import holdfast.session.log.LoggedTake;
import java.io.File;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javax.sound.midi.MidiSystem;
import javax.sound.sampled.AudioSystem;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program is killed (SIGKILL) at any moment while it records, indexes, completes or deletes. Some
 * kills here; {@code -Dholdfast.kills=300} for hundreds.
 */
class BookKillsTest {

  private static final int KILLS = Integer.getInteger("holdfast.kills", 9);
  private static final long SEED = 20261125;

  @TempDir Path folder;

  @Test
  void no_take_is_lost_after_a_phrase_of_it_has_ended() throws Exception {
    Random random = new Random(SEED);
    Path home = folder.resolve("recording");
    Map<String, Integer> said = new HashMap<>();
    for (int kill = 0; kill < share(); kill++) {
      for (String line : killed("record", home, 1 + random.nextInt(30), random.nextInt(60))) {
        int blank = line.lastIndexOf(' ');
        said.merge(
            line.substring(0, blank), Integer.parseInt(line.substring(blank + 1)), Math::max);
      }
      try (Book book = Book.open(home)) {
        List<String> found = book.find(Search.ALL).stream().map(Entry::take).toList();
        assertTrue(found.containsAll(said.keySet()), "after kill " + kill);
        assertEquals(List.of(), book.brokenFolders());
      }
      for (Map.Entry<String, Integer> take : said.entrySet()) {
        Path heard = home.resolve("takes").resolve(take.getKey()).resolve(TakeFolder.HEARD);
        List<PlayedNote> notes = LoggedTake.recover(heard).notes();
        assertTrue(notes.size() >= take.getValue(), take + " has " + notes.size());
        assertEquals(
            told(MadeTakes.notes().subList(0, take.getValue())),
            told(notes.subList(0, take.getValue())));
      }
      assertNoOrphan(home);
      // A fresh start now and then keeps the checks short.
      if (said.size() > 20) {
        said.clear();
        home = folder.resolve("recording" + kill);
      }
    }
  }

  @Test
  void the_table_is_consistent_or_made_anew_by_itself() throws Exception {
    Random random = new Random(SEED);
    Path home = folder.resolve("indexing");
    for (int day = 0; day < 12; day++) {
      MadeTakes.play(home, day % 2 == 0 ? "Mira" : "Ilko", day);
    }
    for (int kill = 0; kill < share(); kill++) {
      killed("index", home, random.nextInt(8), random.nextInt(80));
      try (Book book = Book.open(home);
          Index fresh = Index.inMemory()) {
        new Filling(home.resolve("takes"), fresh).fill();
        assertEquals(fresh.find(Search.ALL), book.find(Search.ALL), "after kill " + kill);
      }
      ageHalfWritten(home);
      try (Book book = Book.open(home)) {
        assertEquals(12, book.size());
      }
      try (Index table = Index.open(home.resolve("book.index"))) {
        table.check();
      }
      assertNoOrphan(home);
    }
  }

  @Test
  void a_deletion_is_done_whole_or_has_not_begun() throws Exception {
    Random random = new Random(SEED);
    Path model = folder.resolve("model");
    for (int day = 0; day < 9; day++) {
      MadeTakes.play(model, day % 3 == 0 ? "Ilko" : "Mira", day);
    }
    try (Book book = Book.open(model)) {
      book.students().keep(Student.named("Mira"));
      book.students().keep(Student.named("Ilko"));
    }
    long lasts = deletionNanos(model);
    int halves = 0;
    for (int kill = 0; kill < share(); kill++) {
      Path home = folder.resolve("deleting" + kill);
      copy(model, home);
      List<String> said =
          kill % 4 == 3
              ? killed("delete", home, 1, random.nextInt(40))
              : killedInDeletion(home, (long) (0.75 * random.nextDouble() * lasts));
      boolean wasBegun = !new Departures(home).begun().isEmpty();
      halves += wasBegun ? 1 : 0;
      int left;
      try (Book book = Book.open(home)) {
        left = book.find(Search.ALL.of("Mira")).size();
        assertTrue(left == 0 || left == 6, "after kill " + kill + " there are " + left);
        assertFalse(wasBegun && left > 0, "a deletion that has begun comes to its end");
        assertFalse(said.contains("gone 6") && left > 0);
        assertEquals(3, book.find(Search.ALL.of("Ilko")).size());
      }
      if (left == 0) {
        assertEquals(List.of(), BookTest.filesThatHold(home, "mira"), "after kill " + kill);
      }
      assertNoOrphan(home);
      new Trash(folder.resolve("gone")).delete(home);
    }
    System.out.println(halves + " of " + share() + " kills hit a deletion in its middle");
  }

  /** To the microsecond: a log keeps where a note ends, not how long it is. */
  private static List<String> told(List<PlayedNote> notes) {
    return notes.stream()
        .map(
            n ->
                String.format(
                    Locale.ROOT, "%.6f-%.6f %d", n.onsetSeconds(), n.endSeconds(), n.pitch()))
        .toList();
  }

  /** JSON is read by Jackson, MIDI by the JDK, WAV by the JDK, PDF by PDFBox. */
  @Test
  void a_report_is_completed_later_or_whole_and_no_file_is_half() throws Exception {
    Random random = new Random(SEED);
    for (int kill = 0; kill < share(); kill++) {
      Path home = folder.resolve("completing" + kill);
      List<String> said = killed("complete", home, 1 + random.nextInt(2), random.nextInt(4000));
      try (Book book = Book.open(home)) {
        for (Entry entry : book.find(Search.ALL)) {
          Path take = home.resolve("takes").resolve(entry.take());
          assertNoHalf(take);
          if (said.contains("completed " + entry.take())) {
            assertTrue(Files.exists(take.resolve(TakeFolder.SOUND)), "after kill " + kill);
            assertTrue(Files.exists(take.resolve(TakeFolder.PAPER)), "after kill " + kill);
          }
        }
        for (String take : book.incomplete()) {
          assertFalse(said.contains("completed " + take), take);
          book.complete(take);
          assertNoHalf(home.resolve("takes").resolve(take));
        }
        assertEquals(List.of(), book.incomplete());
      }
      ageHalfWritten(home);
      try (Book book = Book.open(home)) {
        assertTrue(book.size() >= said.stream().filter(s -> s.startsWith("played")).count());
      }
      assertNoOrphan(home);
    }
  }

  private static void assertNoHalf(Path take) throws Exception {
    new ObjectMapper().readTree(take.resolve(TakeFolder.JUDGEMENT).toFile());
    MidiSystem.getSequence(take.resolve(TakeFolder.MIDI).toFile());
    assertTrue(Files.readString(take.resolve(TakeFolder.REPORT)).endsWith("</html>"));
    Path next = take.resolve(TakeFolder.NEXT);
    if (Files.exists(next)) {
      assertTrue(PlanJson.read(Files.readString(next)).isPresent(), "the plan can be read");
    }
    Path sound = take.resolve(TakeFolder.SOUND);
    if (Files.exists(sound)) {
      long frames = AudioSystem.getAudioFileFormat(sound.toFile()).getFrameLength();
      assertEquals(Files.size(sound) - 44, 2 * frames);
    }
    Path paper = take.resolve(TakeFolder.PAPER);
    if (Files.exists(paper)) {
      try (PDDocument pdf = Loader.loadPDF(paper.toFile())) {
        assertTrue(pdf.getNumberOfPages() > 0);
      }
    }
  }

  private static int share() {
    return Math.max(1, KILLS / 3);
  }

  /** How long a deletion lasts, from what says that it has begun to its end. */
  private long deletionNanos(Path model) throws Exception {
    Path home = folder.resolve("measured");
    copy(model, home);
    Process child = child("delete", home);
    awaitDeletion(home, child);
    long from = System.nanoTime();
    while (Files.exists(begun(home)) && child.isAlive()) {
      LockSupport.parkNanos(100_000);
    }
    long lasts = System.nanoTime() - from;
    assertEquals(0, child.waitFor());
    new Trash(folder.resolve("gone")).delete(home);
    return lasts;
  }

  private static Path begun(Path home) {
    return home.resolve("deleting").resolve(FileNames.unique("Mira"));
  }

  private void awaitDeletion(Path home, Process child) throws Exception {
    await(child, () -> Files.exists(begun(home)) || lines(out()).contains("gone 6"));
  }

  /** Kills a child so long after its deletion has begun. */
  private List<String> killedInDeletion(Path home, long nanos) throws Exception {
    Process child = child("delete", home);
    awaitDeletion(home, child);
    LockSupport.parkNanos(nanos);
    child.destroyForcibly().waitFor();
    return lines(out());
  }

  /** Lets a child say so many lines and run a little on, kills it, and tells all that it said. */
  private List<String> killed(String what, Path home, int lines, int millis) throws Exception {
    Process child = child(what, home);
    await(child, () -> lines(out()).size() >= lines);
    if (!child.waitFor(millis, TimeUnit.MILLISECONDS)) {
      child.destroyForcibly().waitFor();
    }
    return lines(out());
  }

  private void await(Process child, Callable<Boolean> wanted) throws Exception {
    while (!wanted.call()) {
      if (!child.isAlive() && !wanted.call()) {
        throw new AssertionError(
            "the child died early: " + Files.readString(folder.resolve("err.txt")));
      }
      LockSupport.parkNanos(200_000);
    }
  }

  private Path out() {
    return folder.resolve("out.txt");
  }

  private Process child(String what, Path home) throws IOException {
    Files.writeString(out(), "");
    return new ProcessBuilder(
            ChildProgram.java(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-Xshare:auto",
            "--add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED",
            "-Djava.awt.headless=true",
            "-Dholdfast.data=" + home,
            "-cp",
            ChildProgram.classPath(),
            BookChild.class.getName(),
            what,
            home.toString())
        .redirectError(new File(folder.toFile(), "err.txt"))
        .redirectOutput(out().toFile())
        .start();
  }

  /** What was said in whole lines; the last one may have been cut off. */
  private static List<String> lines(Path out) throws IOException {
    String text = Files.readString(out);
    return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
  }

  /** Files that a killed program was writing are removed when they are a minute old. */
  private static void ageHalfWritten(Path home) throws IOException {
    try (Stream<Path> files = Files.walk(home)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".part")).toList()) {
        Files.setLastModifiedTime(file, FileTime.fromMillis(System.currentTimeMillis() - 120_000));
      }
    }
  }

  /** Nothing lies about that belongs to no take, no student and no running program. */
  private static void assertNoOrphan(Path home) throws IOException {
    try (Stream<Path> files = Files.walk(home)) {
      for (Path file : files.toList()) {
        String name = file.getFileName().toString();
        assertFalse(
            name.endsWith(".part") || (name.endsWith(".log") && !name.equals("holdfast.log")),
            "left over: " + file);
      }
    }
    assertFalse(Files.exists(home.resolve("trash")), "the trash is empty");
    assertFalse(Files.exists(home.resolve("deleting")));
    try (Stream<Path> takes = Files.list(home.resolve("takes"))) {
      for (Path take : takes.toList()) {
        for (String file :
            List.of(
                TakeFolder.SETTINGS,
                TakeFolder.HEARD,
                TakeFolder.MIDI,
                TakeFolder.JUDGEMENT,
                TakeFolder.REPORT)) {
          assertTrue(Files.exists(take.resolve(file)), take + " has no " + file);
        }
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.walkFileTree(
        from,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes)
              throws IOException {
            Files.createDirectories(to.resolve(from.relativize(dir)));
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(file, to.resolve(from.relativize(file)));
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
