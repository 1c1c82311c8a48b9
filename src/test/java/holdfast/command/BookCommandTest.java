package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.book.MadeTakes;
import holdfast.book.TakeFolder;
import holdfast.book.UserFolder;
import holdfast.practice.invent.Invented;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a teacher reads who looks into the book. */
class BookCommandTest {

  @TempDir Path home;

  private TakeFolder mirasSecond;

  @BeforeEach
  void three_takes() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
    MadeTakes.play(home, "Mira", 0);
    MadeTakes.play(home, "Ilko", 1);
    mirasSecond = MadeTakes.play(home, "Mira", 2);
  }

  @AfterEach
  void move_out() {
    System.clearProperty(UserFolder.PROPERTY);
  }

  private static String said(String... args) {
    Terminal terminal = Terminal.run(args);
    assertEquals(0, terminal.exitCode(), terminal.err());
    assertEquals("", terminal.err());
    return terminal.out();
  }

  private static String refused(String... args) {
    Terminal terminal = Terminal.run(args);
    assertEquals(2, terminal.exitCode());
    assertEquals("", terminal.out());
    assertEquals(1, terminal.err().lines().count(), terminal.err());
    return terminal.err().strip();
  }

  @Test
  void takes_are_listed_the_newest_first_with_what_became_of_each_phrase() {
    List<String> lines = said("book").lines().toList();
    assertEquals(6, lines.size(), lines.toString());
    assertTrue(
        lines.get(0).matches("2026-09-03 17:30  Mira, Paper Boats: \\d+ of 15 carried \\S{15}"),
        lines.get(0));
    assertEquals("    " + mirasSecond.name(), lines.get(1));
    assertTrue(lines.get(2).contains("Ilko"), lines.get(2));
  }

  @Test
  void a_session_of_inventing_counts_ideas_and_is_no_take_that_lost_one() throws Exception {
    Files.writeString(
        mirasSecond.path().resolve(Invented.FILE),
        "{\"chords\": [\"Dm7\"], \"minutes\": 0.5, \"said\": 3, \"ideas\": ["
            + "{\"number\": 1, \"notes\": \"D4 F4\", \"sameAs\": null},"
            + "{\"number\": 2, \"notes\": \"D5 F5\", \"sameAs\": 1},"
            + "{\"number\": 3, \"notes\": \"A4 E4 E4\", \"sameAs\": null}]}");
    assertEquals(
        "2026-09-03 17:30  Mira, Paper Boats: 2 different ideas of 3, in 0.5 minutes",
        said("book").lines().findFirst().orElseThrow());
    List<String> progress = said("book", "progress", "Mira").lines().toList();
    assertTrue(progress.get(0).matches("Paper Boats  \\S  last: .*"), "one take: " + progress);
    assertTrue(
        progress
            .get(2)
            .matches("Inventing  \\S  last: 2 different ideas of 3, in 0.5 minutes, 4.0 a minute"),
        progress.toString());
  }

  @Test
  void who_sees_only_some_is_told_that_there_are_more() {
    assertEquals(
        "There are older ones; --most 4 shows more.",
        said("book", "--most", "2").lines().toList().get(4));
    assertFalse(said("book", "--most", "3").contains("older ones"));
    assertFalse(said("book", "--most", "2147483647").contains("older ones"));
    assertEquals("No take fits.", said("book", "--student", "Oda").strip());
  }

  @Test
  void what_is_kept_with_a_take_is_said_and_found_again() {
    String take = mirasSecond.name();
    assertEquals(
        "The note is with " + take + ".",
        said("book", "note", "2026-09-03", "Breathe", "before", "bar", "5.").strip());
    assertEquals(
        take + " felt patchy.", said("book", "felt", take, "patchy", "too", "fast").strip());
    List<String> found = said("book", "--words", "breathe").lines().toList();
    assertEquals(3, found.size());
    assertTrue(found.get(0).endsWith(", felt patchy"), found.get(0));
    assertEquals("    Breathe before bar 5.", found.get(2));
  }

  @Test
  void progress_is_a_picture_that_says_how_to_read_it() {
    List<String> lines = said("book", "progress", "mira").lines().toList();
    assertEquals(2, lines.size());
    assertTrue(
        lines.get(0).matches("Paper Boats  \\S\\S  last: \\d+ of 15 carried, longest run \\d+"),
        lines.get(0));
    assertEquals(
        "A block is a take, the newest last; the taller, the more of it was carried.",
        lines.get(1));
  }

  @Test
  void students_are_known_by_name_instrument_and_ear() {
    assertEquals(
        "Mira, recorder, heard as child-voice.",
        said("book", "student", "Mira", "--instrument", "recorder", "--profile", "child-voice")
            .strip());
    assertEquals(
        List.of("Mira, recorder: 2 takes", "Ilko: 1 take"),
        said("book", "students").lines().toList());
  }

  @Test
  void nobody_is_deleted_by_mistake_and_nothing_is_left_of_who_is() throws Exception {
    assertEquals(
        "holdfast: this deletes 2 takes of Mira for good; add --for-good if you are sure",
        refused("book", "delete", "Mira"));
    assertTrue(Files.exists(mirasSecond.path()));
    assertEquals(
        "Mira is deleted with 2 takes.", said("book", "delete", "Mira", "--for-good").strip());
    assertEquals(List.of("Ilko: 1 take"), said("book", "students").lines().toList());
    assertEquals("1 take is in the book.", said("book", "again").strip());
  }

  @Test
  void who_is_not_in_the_book_is_looked_for_in_the_list() {
    String mend = "; `holdfast book students` lists ";
    assertEquals(
        "holdfast: there is no take of Oda in the book" + mend + "all",
        refused("book", "progress", "Oda"));
    assertEquals(
        "holdfast: there is no student Oda in the book" + mend + "all",
        refused("book", "delete", "Oda"));
    assertEquals(
        "holdfast: there is no student Oda in the book" + mend + "them",
        refused("book", "delete", "Oda", "--for-good"));
    assertEquals(
        "holdfast: 3 takes begin with 2026; write more of the name",
        refused("book", "note", "2026", "well done"));
    assertEquals(
        "holdfast: there is no feeling \"fine\"; choose one of slippery, patchy, steady, easy",
        refused("book", "felt", "2026-09-03", "fine"));
    assertEquals(
        "holdfast: --from takes a day as 2026-11-25, not \"yesterday\"",
        refused("book", "--from", "yesterday"));
  }

  @Test
  void an_export_says_how_much_is_in_it() {
    Path file = home.resolve("mira.zip");
    assertEquals(
        "2 takes are in " + file,
        said("book", "export", file.toString(), "--student", "Mira").strip());
    assertTrue(Files.exists(file));
  }

  @Test
  void a_folder_that_cannot_be_read_is_named_and_stops_nothing() throws Exception {
    Files.writeString(mirasSecond.judgement(), "{ torn");
    List<String> lines = said("book", "again").lines().toList();
    assertEquals("2 takes are in the book.", lines.get(0));
    assertTrue(lines.get(1).startsWith("1 folder cannot be read; "), lines.get(1));
    assertTrue(lines.get(1).contains(mirasSecond.judgement().toString()), lines.get(1));
  }
}
