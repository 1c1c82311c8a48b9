package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartLibrary;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class ChartsCommandTest {

  @TempDir Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = commandLine.execute(args);
    commandLine.getOut().flush();
    commandLine.getErr().flush();
    return code;
  }

  @Test
  void without_a_name_all_charts_are_listed() {
    assertEquals(0, run("charts"));
    assertEquals(ChartLibrary.names().size(), out.toString().lines().count());
    assertTrue(out.toString().contains("kettle-minor       12 bars  Cm "), out.toString());
  }

  @Test
  void a_chart_is_shown_in_another_key_for_another_instrument() {
    assertEquals(0, run("charts", "Lantern Turn", "--key", "F", "--for", "Bb", "--text"));
    // From E flat to F is a tone up, and a trumpet in B flat reads a tone above that: G.
    assertTrue(
        out.toString().contains("key: G\n") && out.toString().contains("| Gmaj7 | E7 | Am7 | D7 |"),
        out.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.txt", "a.musicxml", "a.xml", "a.MXL"})
  void a_chart_goes_to_a_file_and_comes_back(String name) {
    Path file = folder.resolve(name);
    assertEquals(0, run("charts", "slow ferry", "--to", file.toString()));
    assertEquals(ChartLibrary.open("slow ferry"), ChartLibrary.open(file));
  }

  @Test
  void a_file_that_is_there_is_never_overwritten() throws IOException {
    Path file = folder.resolve("mine.txt");
    Files.writeString(file, "mine");
    assertEquals(2, run("charts", "slow-ferry", "--to", file.toString()));
    assertEquals("mine", Files.readString(file));
    assertEquals(
        "holdfast: " + file + ": it is there already; choose a new name", err.toString().strip());
  }

  /** The reasons are those of the trade tables' own marks; see TurnsAheadTest. */
  @Test
  void turns_that_nobody_marked_are_found_told_and_marked_on_wish() throws IOException {
    Path plain = folder.resolve("plain.txt");
    Files.writeString(
        plain, "title: Plain\nkey: C\n\n| C6 | Am7 | Dm7 | G7 |\n| Em7 | Eb7 | Dm7 | G7 |\n");
    assertEquals(0, run("charts", plain.toString()));
    String expected = "bar 6, E♭7: leaves the key: slides into Dm7 from a half step above";
    assertTrue(
        out.toString().contains("  " + expected + " (not marked; --mark 6 marks it)"),
        out.toString());

    Path marked = folder.resolve("marked.txt");
    assertEquals(0, run("charts", plain.toString(), "--find-turns", "--to", marked.toString()));
    assertTrue(out.toString().contains("! " + expected), out.toString());
    assertEquals(Set.of(6), ChartLibrary.open(marked).unexpectedBars());

    assertEquals(0, run("charts", marked.toString(), "--unmark", "6", "--mark", "2"));
    assertTrue(out.toString().contains("! bar 2, Am7: marked in the chart"), out.toString());
    assertTrue(out.toString().contains(expected + " (not marked"), out.toString());
  }

  @Test
  void bars_are_marked_and_unmarked() {
    assertEquals(0, run("charts", "lantern-turn", "--mark", "2,3", "--unmark", "6", "--text"));
    assertTrue(out.toString().contains("| Ebmaj7 | ! C7 | ! Fm7 | Bb7 |"), out.toString());
    assertTrue(out.toString().contains("| Ebmaj7 | Gb7 | Fm7 | ! E7#11 |"), out.toString());
  }

  @Test
  void what_a_foreign_score_could_not_say_is_noted() throws IOException {
    Path file = folder.resolve("bare.musicxml");
    Files.writeString(
        file,
        "<score-partwise><part-list/><part id=\"P1\"><measure number=\"1\"><harmony><root>"
            + "<root-step>G</root-step></root><kind>dominant</kind></harmony></measure></part>"
            + "</score-partwise>");
    assertEquals(0, run("charts", file.toString()));
    assertTrue(err.toString().contains("note: the score names no tempo"), err.toString());
    assertTrue(out.toString().startsWith("bare\n"), out.toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "charts no-such-chart",
        "charts slow-ferry --key Q",
        "charts slow-ferry --for Q",
        "charts slow-ferry --mark 99",
        "charts slow-ferry --to /tmp/x.pdf",
        "charts slow-ferry --to /no/such/folder/x.txt",
        "charts /no/such/file.txt"
      })
  void a_mistake_is_one_sentence_and_exit_code_2(String line) {
    assertEquals(2, run(line.split(" ", -1)));
    assertEquals(1, err.toString().lines().count(), err.toString());
    assertTrue(err.toString().startsWith("holdfast: "), err.toString());
    assertEquals("", out.toString());
  }
}
