package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.book.UserFolder;
import holdfast.book.assignment.Answer;
import holdfast.listening.keyboard.TestCable;
import holdfast.practice.Way;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A task goes out, is played in its way, and its answer comes back. */
class AssignmentCommandTest {

  @TempDir Path home;

  private Path task;

  @BeforeEach
  void move_in() throws Exception {
    System.setProperty(UserFolder.PROPERTY, home.resolve("home").toString());
    TestCable.plugIn();
    Path chart = home.resolve("two.txt");
    Files.writeString(chart, "title: Two Bars\nmetre: 2/4\n\n| Dm7 | G7 |\n");
    task = home.resolve("week3.carry");
    Terminal packed =
        Terminal.run(
            "assignment",
            "pack",
            chart.toString(),
            task.toString(),
            "--tempo",
            "200",
            "--choruses",
            "1",
            "--way",
            "head-start",
            "--idea",
            "A4/0.5 F4/0.5 D4",
            "--words",
            "Sing it first.");
    assertEquals(0, packed.exitCode(), packed.err());
    assertEquals("The assignment is in " + task, packed.out().strip());
  }

  @AfterEach
  void move_out() {
    TestCable.pullOut();
    System.clearProperty(UserFolder.PROPERTY);
  }

  @Test
  void a_task_says_what_is_asked() {
    Terminal shown = Terminal.run("assignment", "show", task.toString());
    assertEquals(
        List.of(
            "Two Bars at 200 beats a minute, once round.",
            "The idea: A4/0.5 F4/0.5 D4",
            "Sing it first.",
            "Head start: I say the idea over the first chord, and the rest of the chorus is yours."),
        shown.out().lines().toList());
  }

  @Test
  void a_task_is_played_in_its_way_and_the_answer_says_so() throws Exception {
    Terminal said =
        Terminal.run(
            "play",
            task.toString(),
            "--student",
            "Mira",
            "--input",
            TestCable.NAME,
            "--output",
            "no such device: the take is silent");

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I    over Dm7: A F D"), said.out());
    assertTrue(said.out().contains("you  over G7"), said.out());
    Path answer = home.resolve("Mira_week3.carried");
    assertTrue(said.out().contains("Send this file back: " + answer), said.out());
    TakeFolder unpacked = Answer.unpack(answer, Files.createDirectory(home.resolve("unpacked")));
    TakeSettings settings = unpacked.settings();
    assertEquals(Optional.of("head-start"), settings.way());
    assertTrue(settings.assignment().isPresent());
    assertEquals(Optional.of("Mira"), settings.student());
  }

  @Test
  void the_demo_student_knows_no_ways_and_her_answer_claims_none() throws Exception {
    Terminal said =
        Terminal.run(
            "play",
            task.toString(),
            "--demo",
            "--student",
            "Mira",
            "--output",
            "no such device: the take is silent");
    assertEquals(0, said.exitCode(), said.err());
    assertFalse(said.out().contains("I    over"), said.out());
    TakeFolder unpacked =
        Answer.unpack(
            home.resolve("Mira_week3.carried"), Files.createDirectory(home.resolve("unpacked")));
    assertEquals(Optional.empty(), unpacked.settings().way());
  }

  @Test
  void what_an_assignment_does_not_keep_is_refused_and_not_listed() {
    Path file = home.resolve("week4.carry");
    String help = Terminal.run("assignment", "pack", "--help").out();
    for (String[] option :
        new String[][] {{"--bars", "1..1"}, {"--count-in", "2"}, {"--mute", "bass"}}) {
      Terminal said =
          Terminal.run("assignment", "pack", "Paper Boats", file.toString(), option[0], option[1]);
      assertEquals(2, said.exitCode());
      assertTrue(said.err().contains("'" + option[0] + "'"), said.err());
      assertFalse(Files.exists(file));
      assertFalse(help.contains(option[0]), help);
    }
    assertEquals(
        2,
        Terminal.run("assignment", "pack", "Paper Boats", file.toString(), "--choruses", "endless")
            .exitCode());
    assertFalse(Files.exists(file), "endless is not three times round");
  }

  @Test
  void what_the_assignment_says_cannot_be_said_otherwise_and_the_rest_is_the_students() {
    Terminal refused =
        Terminal.run("play", task.toString(), "--tempo", "60", "--bars", "1..1", "--idea", "C4 D4");
    assertEquals(2, refused.exitCode());
    assertEquals(
        "holdfast: your teacher's assignment says this already, so leave out --tempo, --bars,"
            + " --idea",
        refused.err().strip());
    Terminal silent =
        Terminal.run("play", task.toString(), "--count-in", "9", "--output", "no such device");
    assertEquals(
        "holdfast: --count-in takes 0 to 4 bars, not 9", silent.err().strip(), "it is looked at");
  }

  @Test
  void an_idea_of_ones_own_is_not_asked_for_where_the_coach_brings_one() {
    for (Way way : Way.values()) {
      Path file = home.resolve(way.word() + ".carry");
      Terminal.run("assignment", "pack", "Paper Boats", file.toString(), "--way", way.word());
      String asked = Terminal.run("assignment", "show", file.toString()).out();
      boolean coach = way == Way.HEAD_START || way == Way.SWAP || way == Way.GUESS_NEXT;
      assertEquals(coach, asked.contains("I bring an idea; listen for it."), asked);
      assertEquals(!coach, asked.contains("Bring an idea of your own."), asked);
    }
  }

  @Test
  void who_names_a_way_that_is_none_reads_those_that_are() {
    Terminal said =
        Terminal.run(
            "assignment",
            "pack",
            "Paper Boats",
            home.resolve("week4.carry").toString(),
            "--way",
            "hurry");
    assertEquals(2, said.exitCode());
    assertTrue(
        said.err()
            .startsWith("holdfast: there is no way \"hurry\"; choose one of head-start, swap"),
        said.err());
  }
}
