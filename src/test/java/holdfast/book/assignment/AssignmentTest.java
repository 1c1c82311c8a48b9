package holdfast.book.assignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Feel;
import holdfast.book.Book;
import holdfast.book.MadeTakes;
import holdfast.book.Search;
import holdfast.book.TakeFolder;
import holdfast.chart.ChartLibrary;
import holdfast.melody.IdeaNotation;
import holdfast.mistake.UserMistake;
import holdfast.practice.Way;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A task goes to a student and its answer comes back; what comes from elsewhere is not trusted. */
class AssignmentTest {

  @TempDir Path folder;

  private static Assignment task() {
    return new Assignment(
        "week-3",
        ChartLibrary.open("lantern-turn"),
        Feel.BALLAD,
        66,
        2,
        Optional.of(IdeaNotation.parse("G4/0.5 A4/0.5 C5 A4 E4/1.5")),
        Optional.of(Way.SWAP),
        "Sing it first. 練習 “ü”");
  }

  @Test
  void an_assignment_comes_out_as_it_went_in_and_is_open_to_any_program() throws IOException {
    Path file = folder.resolve("Woche 3 – übung.carry");
    task().write(file);
    assertEquals(task(), Assignment.read(file));
    assertTrue(Files.size(file) < 4096, "small enough for any letter");
    try (ZipFile zip = new ZipFile(file.toFile())) {
      assertEquals(2, zip.size());
      String chart =
          new String(
              zip.getInputStream(zip.getEntry("chart.txt")).readAllBytes(), StandardCharsets.UTF_8);
      assertTrue(chart.contains("Lantern Turn"));
    }
  }

  @Test
  void an_answer_is_a_whole_take_on_another_machine() throws IOException {
    Path here = folder.resolve("here");
    TakeFolder played = MadeTakes.play(here, "Mira", 3);
    Path file = folder.resolve("mira.carried");
    Answer.pack(played, file, false);
    try (Book elsewhere = Book.open(folder.resolve("elsewhere"))) {
      TakeFolder kept = elsewhere.keep(into -> Answer.unpack(file, into));
      assertEquals(1, elsewhere.find(Search.ALL.of("Mira")).size());
      assertEquals(played.judged().counts().carried(), kept.judged().counts().carried());
      assertEquals(Files.readString(played.judgement()), Files.readString(kept.judgement()));
    }
    assertFalse(Files.exists(folder.resolve("elsewhere").resolve("trash")));
  }

  @Test
  void an_answer_that_comes_twice_is_kept_once() {
    TakeFolder played = MadeTakes.play(folder.resolve("here"), "Mira", 3);
    Path file = folder.resolve("mira.carried");
    Answer.pack(played, file, false);
    try (Book elsewhere = Book.open(folder.resolve("elsewhere"))) {
      TakeFolder first = elsewhere.keep(into -> Answer.unpack(file, into));
      TakeFolder again = elsewhere.keep(into -> Answer.unpack(file, into));
      assertEquals(first.path(), again.path());
      assertEquals(1, elsewhere.size());
    }
    try (Book here = Book.open(folder.resolve("here"))) {
      assertEquals(played.path(), here.keep(into -> Answer.unpack(file, into)).path());
    }
  }

  @Test
  void an_assignment_of_a_newer_version_is_not_half_understood() throws IOException {
    Path file = folder.resolve("newer.carry");
    zip(file, Map.of("assignment.json", bytes("{\"version\": 2}"), "chart.txt", bytes("?")));
    assertEquals(
        file
            + " was packed by a newer Holdfast; get that one, or ask your teacher to pack it with"
            + " the older one",
        assertThrows(UserMistake.class, () -> Assignment.read(file)).getMessage());
    zip(
        file,
        Map.of(
            "assignment.json",
            bytes("{\"number\": \"n\", \"tempo\": 60, \"choruses\": 1, \"way\": \"waltz\"}"),
            "chart.txt",
            bytes("title: A\n\n| C |\n")));
    assertEquals(
        file + ": there is no way of practising \"waltz\"; ask your teacher to pack it once more",
        assertThrows(UserMistake.class, () -> Assignment.read(file)).getMessage());
  }

  @Test
  void a_renamed_assignment_is_known_by_what_it_holds_and_a_cut_one_is_said_to_be_cut()
      throws IOException {
    Path file = folder.resolve("week3.carry");
    task().write(file);
    Path renamed = Files.copy(file, folder.resolve("week3.carry.zip"));
    assertTrue(Assignment.isOne(renamed));
    assertFalse(Assignment.isOne(Files.writeString(folder.resolve("a.txt"), "title: A")));
    assertFalse(Assignment.isOne(folder.resolve("Slow Ferry")));
    byte[] whole = Files.readAllBytes(file);
    Path cut = Files.write(folder.resolve("cut.carry"), Arrays.copyOf(whole, 100));
    assertEquals(
        cut + " is cut off; ask for it to be sent again",
        assertThrows(UserMistake.class, () -> Assignment.read(cut)).getMessage());
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void an_answer_is_named_after_student_and_task_whatever_their_names() {
    Path task = folder.resolve("week3.carry");
    for (String[] name :
        new String[][] {
          {"Mira", "Mira_week3.carried"},
          {"../../etc", "etc_week3.carried"},
          {"-rf", "rf_week3.carried"},
          {"Lio B.", "Lio-B_week3.carried"},
          {"…", "week3.carried"},
          {"練習", "練習_week3.carried"}
        }) {
      assertEquals(folder.resolve(name[1]), Answer.beside(task, Optional.of(name[0])));
    }
    assertEquals(folder.resolve("week3.carried"), Answer.beside(task, Optional.empty()));
  }

  @Test
  void sound_goes_along_only_when_somebody_says_so() throws IOException {
    TakeFolder played = MadeTakes.play(folder.resolve("here"), "Mira", 3);
    Files.write(played.recording(), new byte[100]);
    Path silent = folder.resolve("silent.carried");
    Path sounding = folder.resolve("sounding.carried");
    Answer.pack(played, silent, false);
    Answer.pack(played, sounding, true);
    try (ZipFile without = new ZipFile(silent.toFile());
        ZipFile with = new ZipFile(sounding.toFile())) {
      assertEquals(1, with.size() - without.size());
    }
  }

  @Test
  void a_name_that_leads_out_of_the_folder_writes_nothing_there() throws IOException {
    Path file = folder.resolve("bad.carried");
    zip(file, Map.of("../outside.txt", new byte[10], "/tmp/outside", new byte[10]));
    Path into = Files.createDirectory(folder.resolve("into"));
    UserMistake mistake = assertThrows(UserMistake.class, () -> Answer.unpack(file, into));
    assertTrue(mistake.getMessage().contains("is no answer of ours"), mistake.getMessage());
    assertFalse(Files.exists(folder.resolve("outside.txt")));
    assertEquals(0, into.toFile().list().length);
  }

  @Test
  void a_small_file_that_unpacks_to_very_much_is_refused() throws IOException {
    Path bomb = folder.resolve("bomb.carry");
    try (OutputStream out = Files.newOutputStream(bomb);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry("assignment.json"));
      byte[] zeros = new byte[1 << 20];
      for (int i = 0; i < 64; i++) {
        zip.write(zeros);
      }
      zip.closeEntry();
    }
    assertTrue(Files.size(bomb) < 100_000);
    UserMistake mistake = assertThrows(UserMistake.class, () -> Assignment.read(bomb));
    assertTrue(mistake.getMessage().contains("longer than"), mistake.getMessage());
  }

  @Test
  void a_file_of_very_many_parts_is_refused() throws IOException {
    Path many = folder.resolve("many.carry");
    try (OutputStream out = Files.newOutputStream(many);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (int i = 0; i < 1000; i++) {
        zip.putNextEntry(new ZipEntry("part" + i));
        zip.closeEntry();
      }
    }
    UserMistake mistake = assertThrows(UserMistake.class, () -> Assignment.read(many));
    assertTrue(mistake.getMessage().contains("too many files"), mistake.getMessage());
  }

  @Test
  void a_file_that_is_cut_or_changed_anywhere_is_told_in_one_sentence_or_read() throws IOException {
    Path whole = folder.resolve("whole.carry");
    task().write(whole);
    byte[] bytes = Files.readAllBytes(whole);
    Path cut = folder.resolve("cut.carry");
    for (int at = 0; at < bytes.length; at += 7) {
      Files.write(cut, Arrays.copyOf(bytes, at));
      readOrRefuse(cut);
      byte[] changed = bytes.clone();
      changed[at] ^= 0x15;
      Files.write(cut, changed);
      readOrRefuse(cut);
    }
  }

  private static void readOrRefuse(Path file) {
    try {
      Assignment.read(file);
    } catch (UserMistake told) {
      assertTrue(told.getMessage().contains(file.toString()), told.getMessage());
      assertFalse(told.getMessage().contains("\n"), told.getMessage());
    }
  }

  private static void zip(Path file, Map<String, byte[]> parts) throws IOException {
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue());
        zip.closeEntry();
      }
    }
  }
}
