package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgeCommandTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * Four bars over Cmaj7 Am7 Dm7 G7, the first bars of Porch Light: an idea, the same again, the
   * same shape a step up as a tonal sequence, and a scale run. In abc notation, an open standard
   * (abc 2.1); the MIDI file is made by abc2midi of the abcmidi package.
   */
  private static final String ABC =
      """
      X:1
      T:a take
      M:4/4
      L:1/8
      Q:1/4=60
      K:C
      E2 G2 A3 z | E2 G2 A3 z | F2 A2 B3 z | GABc def z |
      """;

  @TempDir Path folder;

  @Test
  void a_take_that_another_program_wrote_is_judged() throws Exception {
    Path abc = Files.writeString(folder.resolve("take.abc"), ABC);
    Path take = folder.resolve("take.mid");
    assumeTrue(abc2midi(abc, take), "abc2midi is not installed: apt-get install abcmidi");

    Terminal said = Terminal.run("judge", take.toString(), "--chart", "Porch Light", "--json");

    assertEquals(0, said.exitCode(), said.err());
    JsonNode judged = JSON.readTree(said.out());
    assertAll(
        () -> assertEquals(4, judged.get("phrases").size()),
        () -> assertEquals(64, judged.at("/idea/notes/0/pitch").asInt()),
        () -> assertEquals("literal", judged.at("/phrases/1/treatment").asText()),
        () -> assertEquals("Am7", judged.at("/phrases/1/chords/0").asText()),
        // E G A up a scale step of C major is F A B: thirds and seconds stay, one changes size.
        () -> assertEquals("sequence", judged.at("/phrases/2/treatment").asText()),
        () -> assertEquals("new", judged.at("/phrases/3/family").asText()),
        () -> assertEquals("a scale run", judged.at("/phrases/3/material").asText()),
        () -> assertEquals(2, judged.at("/summary/carried").asInt()),
        () -> assertEquals(4, judged.at("/summary/lost/0/bar").asInt()));
  }

  @ParameterizedTest
  @CsvSource({
    "missing.mid, Porch Light, missing.mid",
    "text.mid, Porch Light, text.mid",
    "empty.mid, Porch Light, empty.mid",
    "text.mid, No Such Chart, No Such Chart",
  })
  void a_mistake_is_told_in_one_sentence_that_names_it(String file, String chart, String named)
      throws IOException {
    Files.writeString(folder.resolve("text.mid"), "not MIDI at all");
    Files.write(folder.resolve("empty.mid"), new byte[0]);

    Terminal said = Terminal.run("judge", folder.resolve(file).toString(), "--chart", chart);

    assertAll(
        () -> assertEquals(2, said.exitCode()),
        () -> assertEquals("", said.out()),
        () -> assertEquals(1, said.err().lines().count(), said.err()),
        () -> assertTrue(said.err().contains(named), said.err()),
        () -> assertFalse(said.err().contains("Exception"), said.err()));
  }

  @Test
  void a_report_in_a_folder_that_is_missing_loses_nothing_and_says_so() throws Exception {
    Path abc = Files.writeString(folder.resolve("take.abc"), ABC);
    Path take = folder.resolve("take.mid");
    assumeTrue(abc2midi(abc, take), "abc2midi is not installed: apt-get install abcmidi");
    Path report = folder.resolve("nowhere").resolve("report.html");

    Terminal said =
        Terminal.run(
            "judge", take.toString(), "--chart", "Porch Light", "--report", report.toString());

    assertEquals(2, said.exitCode());
    assertTrue(said.err().contains("nowhere"), said.err());
    assertTrue(said.out().contains("You carried your idea"), said.out());
  }

  private static boolean abc2midi(Path abc, Path midi) throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder("abc2midi", abc.toString(), "-o", midi.toString())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(20, TimeUnit.SECONDS) && Files.exists(midi);
    } catch (IOException missing) {
      return false;
    }
  }
}
