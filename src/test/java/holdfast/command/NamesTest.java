package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.ChildProgram;
import holdfast.book.MadeTakes;
import holdfast.book.UserFolder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Spaces and letters of any script in the names of folders, files, charts and students. */
class NamesTest {

  private static final String STUDENT = "Zoë 小雪 🎵 נועה";
  private static final String TITLE = "Fähre 渡し 🎵 מעבר";

  @TempDir Path folder;

  private Path home;
  private Path chart;

  @BeforeEach
  void move_in() throws IOException {
    try {
      home = folder.resolve("Übungen 日本 🎵 שלום (a b)");
    } catch (InvalidPathException plainLettersOnly) {
      Assumptions.abort("skipped: this system was started with plain letters only");
    }
    Files.createDirectory(home);
    System.setProperty(UserFolder.PROPERTY, home.toString());
    chart = home.resolve("Fähre 渡し 🎵.txt");
    Files.writeString(chart, "title: " + TITLE + "\nkey: C\ntempo: 90\n\n| C | Am7 | Dm7 | G7 |\n");
  }

  @AfterEach
  void move_out() {
    System.clearProperty(UserFolder.PROPERTY);
  }

  @Test
  void a_chart_goes_through_every_command_that_reads_and_writes_files() throws IOException {
    assertTrue(done("charts", chart.toString()).contains(TITLE));
    Path sheet = home.resolve("Blatt 譜 (1).musicxml");
    done("charts", chart.toString(), "--to", sheet.toString());
    assertTrue(done("charts", sheet.toString()).contains(TITLE));
    Path midi = home.resolve("Begleitung 伴奏 🎵.mid");
    done("backing", chart.toString(), "--to", midi.toString());
    assertTrue(Files.size(midi) > 100);
    Path task = home.resolve("Woche 3 宿題.carry");
    done("assignment", "pack", chart.toString(), task.toString(), "--words", "Sing נא 先");
    String shown = done("assignment", "show", task.toString());
    assertTrue(shown.contains(TITLE) && shown.contains("Sing נא 先"), shown);
  }

  @Test
  void a_take_is_judged_reported_kept_and_deleted() throws IOException {
    Path take = MadeTakes.play(home, STUDENT, 1).path();
    Path returned = Files.createDirectory(home.resolve("zurück 返却"));
    Path midi = Files.copy(take.resolve("take.mid"), returned.resolve("小雪🎵 2 דו.mid"));
    for (String ending : List.of("html", "pdf", "csv", "musicxml")) {
      Path report = home.resolve("Bericht 報告 🎵 דו." + ending);
      done("judge", midi.toString(), "--chart", chart.toString(), "--report", report.toString());
      assertTrue(Files.size(report) > 100, report.toString());
    }
    Path page = home.resolve("Übersicht 一覧");
    done("class", returned.toString(), "--chart", chart.toString(), "--to", page.toString());
    try (Stream<Path> files = Files.walk(page)) {
      String all =
          files
              .filter(f -> f.toString().endsWith(".html"))
              .map(NamesTest::text)
              .reduce("", String::concat);
      assertTrue(all.contains("小雪🎵"), all);
      assertTrue(all.contains(TITLE), all);
    }
    assertTrue(done("book").contains(STUDENT));
    done("book", "delete", STUDENT, "--for-good");
    assertFalse(done("book").contains(STUDENT));
    assertTrue(Files.notExists(take));
  }

  @Test
  void a_system_that_has_no_such_names_says_so_in_one_sentence() throws Exception {
    assertTold(child("HOLDFAST_HOME", home.toString(), "charts"));
    assertTold(child("X", "x", "charts", chart.toString()));
    assertTold(child("X", "x", "backing", "Slow Ferry", "--to", home.resolve("ä.mid").toString()));
  }

  private static String done(String... args) {
    Terminal said = Terminal.run(args);
    assertEquals(0, said.exitCode(), Arrays.toString(args) + said.err());
    return said.out();
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** A program of ours, started in a language of plain letters: exit code, and all it said. */
  private List<String> child(String variable, String value, String... args) throws Exception {
    List<String> line = new ArrayList<>(List.of(ChildProgram.java()));
    line.addAll(List.of("-cp", ChildProgram.classPath(), Main.class.getName()));
    line.addAll(List.of(args));
    Path said = folder.resolve("said");
    ProcessBuilder builder =
        new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(said.toFile());
    builder.environment().put("HOLDFAST_HOME", folder.resolve("plain").toString());
    builder.environment().put("LC_ALL", "C");
    builder.environment().put(variable, value);
    Process child = builder.start();
    assertTrue(child.waitFor(120, TimeUnit.SECONDS));
    return List.of(
        String.valueOf(child.exitValue()), Files.readString(said, StandardCharsets.ISO_8859_1));
  }

  private static void assertTold(List<String> child) {
    assertEquals("2", child.get(0), child.get(1));
    assertTrue(child.get(1).contains("start holdfast with LC_ALL=C.UTF-8"), child.get(1));
    assertFalse(child.get(1).contains("Exception"), child.get(1));
  }
}
