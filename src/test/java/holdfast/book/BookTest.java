package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files are the truth; the table follows them, whatever happens to it. */
class BookTest {

  @TempDir Path folder;

  private Path home;

  @BeforeEach
  void three_takes() {
    home = folder.resolve("Mira’s übung 練習");
    MadeTakes.play(home, "Mira", 0);
    MadeTakes.play(home, "Ilko", 1);
    MadeTakes.play(home, "mira", 2);
  }

  @Test
  void takes_are_found_by_student_chart_date_and_words() {
    try (Book book = Book.open(home)) {
      assertEquals(List.of(), book.brokenFolders());
      assertEquals(3, book.find(Search.ALL).size());
      assertEquals("mira", book.find(Search.ALL).get(0).student().orElseThrow());
      assertEquals(2, book.find(Search.ALL.of("MIRA")).size(), "case does not count");
      assertEquals(3, book.find(Search.ALL.over("BOATS")).size());
      assertEquals(0, book.find(Search.ALL.over("ferry")).size());
      LocalDate second = LocalDate.of(2026, 9, 2);
      Search that =
          new Search(
              Optional.empty(),
              Optional.empty(),
              Optional.of(second),
              Optional.of(second),
              List.of(),
              9);
      assertEquals("Ilko", book.find(that).get(0).student().orElseThrow());
      assertEquals(1, book.find(that).size());
      TakeFolder ilko = book.take(book.find(that).get(0).take());
      ilko.note("Sing the ÜBUNG first.");
      book.refresh();
      Search words =
          new Search(
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              List.of("übung", "ilko"),
              9);
      assertEquals(List.of(ilko.name()), book.find(words).stream().map(Entry::take).toList());
      assertEquals(1, book.find(Search.ALL.atMost(1)).size());
    }
  }

  @Test
  void a_line_tells_what_stands_in_the_judgement() {
    JudgedTake judged =
        holdfast.session.Coach.judge(MadeTakes.SETTING, MadeTakes.notes(), phrase -> {});
    try (Book book = Book.open(home)) {
      Entry entry = book.find(Search.ALL).get(0);
      assertEquals(judged.counts().phrases(), entry.phrases());
      assertEquals(judged.counts().carried(), entry.carried());
      assertEquals(judged.counts().longestRun(), entry.longestRun());
      assertEquals(judged.counts().phrases(), entry.families().length());
      assertEquals(
          judged.counts().lost().stream().map(p -> p.place().bar()).toList(), entry.lostBars());
      assertEquals(
          judged.counts().carried(),
          entry.families().chars().filter(family -> family != 'n').count());
      assertEquals(judged.counts().restated(), entry.progress().restated());
    }
  }

  @Test
  void students_charts_and_ideas_are_told() {
    try (Book book = Book.open(home)) {
      book.students().keep(new Student("Oda", Optional.of("flute"), Optional.of("child")));
      assertEquals(
          List.of("mira", "Ilko", "Oda"), book.everybody().stream().map(Student::name).toList());
      assertEquals(Optional.of("flute"), book.students().find("ODA").orElseThrow().instrument());
      assertEquals(
          List.of(new Book.Tried(MadeTakes.DEMO.chart().title(), 2)),
          book.charts(Optional.of("Mira")));
      assertEquals(3, book.ideas(Optional.empty()).get(0).takes());
    }
  }

  @Test
  void files_that_change_behind_its_back_are_taken_in() throws IOException {
    try (Book book = Book.open(home)) {
      List<Entry> all = book.find(Search.ALL);
      Path takes = home.resolve("takes");
      new Trash(folder.resolve("trash")).delete(takes.resolve(all.get(0).take()));
      MadeTakes.play(home, "Bas", 9);
      book.refresh();
      assertEquals(
          List.of("Bas", "Ilko", "Mira"),
          book.find(Search.ALL).stream().map(e -> e.student().orElseThrow()).toList());
    }
  }

  @Test
  void a_table_that_is_missing_broken_or_of_another_version_is_made_anew() throws IOException {
    List<Entry> before = all();
    Path table = home.resolve("book.index");
    Files.delete(table);
    assertEquals(before, all());
    Files.write(table, "this is no table".repeat(1000).getBytes(StandardCharsets.UTF_8));
    assertEquals(before, all());
    byte[] bytes = Files.readAllBytes(table);
    for (int cut : new int[] {1, 99, 4096, bytes.length / 2, bytes.length - 100}) {
      Files.write(table, java.util.Arrays.copyOf(bytes, cut));
      assertEquals(before, all(), "cut at " + cut);
    }
    bytes[63] ^= 0x40; // user_version, SQLite's file format, offset 60
    Files.write(table, bytes);
    assertEquals(before, all());
    Files.write(home.resolve("book.index.making-anew"), new byte[0]);
    assertEquals(before, all());
  }

  private List<Entry> all() {
    try (Book book = Book.open(home)) {
      return book.find(Search.ALL);
    }
  }

  @Test
  void two_may_have_it_open_at_once() {
    try (Book window = Book.open(home);
        Book terminal = Book.open(home)) {
      MadeTakes.play(home, "Bas", 3);
      terminal.refresh();
      window.refresh();
      assertEquals(4, terminal.size());
      assertEquals(4, window.size());
      terminal.forget("Bas");
      window.refresh();
      assertEquals(3, window.size());
    }
  }

  @Test
  void a_broken_folder_is_told_in_one_sentence_and_stops_nothing() throws IOException {
    try (Book book = Book.open(home)) {
      String first = book.find(Search.ALL).get(0).take();
      Files.writeString(home.resolve("takes").resolve(first).resolve("take.settings"), "{");
      Files.delete(
          Files.createFile(home.resolve("takes").resolve(first).resolve("touched.by.hand")));
      Files.createDirectories(home.resolve("takes").resolve("not a take"));
      book.refresh();
      assertEquals(2, book.size());
      assertEquals(2, book.brokenFolders().size());
      assertTrue(
          book.brokenFolders().get(0).contains("take.settings, line 1: this is no JSON"),
          book.brokenFolders().toString());
    }
  }

  @Test
  void a_student_goes_with_everything_of_theirs() throws IOException {
    try (Book book = Book.open(home)) {
      book.students().keep(new Student("Mira", Optional.of("voice"), Optional.empty()));
      Files.writeString(book.students().folderOf("mira").resolve("ideas.json"), "[\"Mira's\"]");
      assertEquals(2, book.forget("MIRA"));
      assertEquals(1, book.size());
    }
    assertEquals(List.of(), filesThatHold(home, "mira"));
    assertFalse(filesThatHold(home, "ilko").isEmpty());
    assertFalse(Files.exists(home.resolve("deleting")));
    try (Book book = Book.open(home)) {
      UserMistake mistake = assertThrows(UserMistake.class, () -> book.forget("Mira"));
      assertTrue(mistake.getMessage().startsWith("there is no student Mira"));
    }
  }

  /** Files in which this name stands, whatever its case; a name in a binary file counts. */
  static List<Path> filesThatHold(Path folder, String name) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> text(file).toLowerCase(java.util.Locale.ROOT).contains(name))
          .toList();
    }
  }

  private static String text(Path file) {
    try {
      return file.getFileName() + new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void nobody_is_deleted_while_playing() throws IOException {
    try (Book book = Book.open(home);
        KeptTake running =
            KeptTake.begin(
                home.resolve("takes"), MadeTakes.settings("Ilko", 5), MadeTakes.PERFORMANCE)) {
      UserMistake mistake = assertThrows(UserMistake.class, () -> book.forget("Ilko"));
      assertTrue(mistake.getMessage().contains("is playing"), mistake.getMessage());
      assertEquals(1, book.find(Search.ALL.of("Ilko")).size());
      assertTrue(Files.exists(running.folder().path()));
    }
  }

  @Test
  void the_teachers_word_counts_in_the_book_and_in_the_report() {
    try (Book book = Book.open(home)) {
      Entry before = book.find(Search.ALL).get(0);
      TakeFolder folder = book.take(before.take());
      JudgedTake judged = folder.judged();
      assertEquals(before.carried(), judged.counts().carried(), "judged again, it is the same");
      Overruling ruling =
          Overruling.of(
              judged.counts().lost().get(0), Family.RESTATED, Optional.of("I hear it in there."));
      book.overrule(before.take(), ruling);
      Entry after = book.find(Search.ALL).get(0);
      assertEquals(before.carried() + 1, after.carried());
      assertEquals(1, after.overruled());
      assertTrue(text(folder.report()).contains("I hear it in there."));
      folder.tellAgain(book.before(folder.settings()));
      book.refresh();
      assertEquals(after, book.find(Search.ALL).get(0), "also when it is told anew");
    }
  }

  @Test
  void a_take_is_judged_the_same_by_its_midi_file_alone() throws IOException {
    try (Book book = Book.open(home)) {
      TakeFolder folder = book.take(book.find(Search.ALL).get(0).take());
      JudgedTake heard = folder.judged();
      Files.delete(folder.path().resolve(TakeFolder.HEARD));
      JudgedTake read = folder.judged();
      assertEquals(heard.counts().carried(), read.counts().carried());
      assertEquals(
          heard.phrases().stream().map(p -> p.verdict().treatment()).toList(),
          read.phrases().stream().map(p -> p.verdict().treatment()).toList());
    }
  }

  @Test
  void earlier_takes_of_the_chart_are_set_beside_the_report() {
    try (Book book = Book.open(home)) {
      Entry newest = book.find(Search.ALL).get(0);
      assertEquals(
          List.of(LocalDate.of(2026, 9, 1)),
          book.before(book.take(newest.take()).settings()).earlier().stream()
              .map(take -> take.day())
              .toList());
    }
  }

  @Test
  void how_it_felt_is_kept() {
    try (Book book = Book.open(home)) {
      Entry newest = book.find(Search.ALL).get(0);
      SelfEstimate felt = new SelfEstimate(SelfEstimate.Feeling.PATCHY, "bar 5 again");
      book.take(newest.take()).felt(felt);
      book.refresh();
      assertEquals(
          Optional.of(SelfEstimate.Feeling.PATCHY), book.find(Search.ALL).get(0).feeling());
      assertEquals(Optional.of(felt), book.take(newest.take()).felt());
    }
  }

  @Test
  void a_folder_that_may_only_be_read_is_read() throws IOException {
    Path takes = home.resolve("takes");
    List<Entry> before = all();
    assumeTrue(home.toFile().setWritable(false), "this system cannot say so");
    takes.toFile().setWritable(false);
    try {
      assumeTrue(!Files.isWritable(home), "this user may write everywhere");
      try (Book book = Book.open(home)) {
        assertEquals(before, book.find(Search.ALL));
        assertEquals(1, book.said().size());
      }
      assertThrows(UserMistake.class, () -> MadeTakes.play(home, "Mira", 7));
    } finally {
      assertTrue(home.toFile().setWritable(true) && takes.toFile().setWritable(true));
    }
  }

  @Test
  void names_that_no_file_could_have_are_names_of_students_all_the_same() {
    try (Book book = Book.open(home)) {
      for (String name :
          List.of("../x", "con", "a/b\\c:d*?", "…", "Zoë 🎷", "%2F", "x".repeat(40))) {
        book.students().keep(Student.named(name));
        MadeTakes.play(home, name, 20);
        book.refresh();
        assertEquals(name, book.students().find(name).orElseThrow().name());
        assertEquals(home.resolve("students"), book.students().folderOf(name).getParent());
        assertEquals(1, book.find(Search.ALL.of(name)).size());
        assertEquals(1, book.forget(name));
      }
      assertEquals(List.of(), book.students().all());
      assertThrows(UserMistake.class, () -> Student.named(" \n"));
    }
  }
}
