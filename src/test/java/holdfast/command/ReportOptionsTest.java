package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.book.MadeTakes;
import holdfast.book.TakeFolder;
import holdfast.book.UserFolder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can be asked of a report, and a teacher's word, as typed. */
class ReportOptionsTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path home;

  private TakeFolder take;

  @BeforeEach
  void a_kept_take() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
    take = MadeTakes.play(home, "Mira", 0);
  }

  @AfterEach
  void moveOut() {
    System.clearProperty(UserFolder.PROPERTY);
  }

  private Terminal judge(String... more) {
    String[] words = {
      "judge", take.path().resolve(TakeFolder.MIDI).toString(), "--chart", "Paper Boats"
    };
    String[] all = java.util.Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return Terminal.run(all);
  }

  @Test
  void a_report_lets_its_phrases_be_heard_and_is_written_for_its_reader() throws Exception {
    Path plain = home.resolve("plain.html");
    Path heard = home.resolve("heard.html");
    assertEquals(0, judge("--report", plain.toString()).exitCode());
    Terminal said =
        judge("--report", heard.toString(), "--hear", "--for", "Bb", "--clef", "treble8");
    assertEquals(0, said.exitCode(), said.err());

    String silent = Files.readString(plain, StandardCharsets.UTF_8);
    String page = Files.readString(heard, StandardCharsets.UTF_8);
    JsonNode judged = JSON.readTree(take.judgement().toFile());
    assertFalse(silent.contains("<audio"));
    assertEquals(
        judged.get("phrases").size(),
        Pattern.compile("src=\"data:audio/mpeg;base64,[A-Za-z0-9+/=]{1000,}\"")
            .matcher(page)
            .results()
            .count());
    assertFalse(silent.contains("B♭ instrument"));
    assertTrue(page.contains("B♭"), "it says for whom it is written");
    String idea = section(page);
    assertFalse(section(silent).equals(idea), "the idea is written in another place");
  }

  private static String section(String page) {
    int from = page.indexOf("class=\"idea\"");
    return page.substring(from, page.indexOf("</section>", from));
  }

  @Test
  void a_reader_or_clef_that_nobody_has_is_told() {
    Path report = home.resolve("r.html");
    for (String[] wrong : new String[][] {{"--for", "H"}, {"--clef", "soprano"}}) {
      Terminal said = judge("--report", report.toString(), wrong[0], wrong[1]);
      assertEquals(2, said.exitCode());
      assertEquals(1, said.err().lines().count(), said.err());
      assertTrue(said.err().contains(wrong[0] + " " + wrong[1]), said.err());
      assertFalse(Files.exists(report));
    }
  }

  @Test
  void a_teachers_word_is_kept_and_counts_in_the_page_the_paper_and_the_table() throws Exception {
    JsonNode before = JSON.readTree(take.judgement().toFile());
    int lost = 0;
    while (!before.at("/phrases/" + lost + "/family").asText().equals("new")) {
      lost++;
    }
    Terminal said =
        Terminal.run(
            "overrule",
            take.name(),
            Integer.toString(lost + 1),
            "--as",
            "varied",
            "--words",
            "it comes back <upside> down");

    assertEquals(0, said.exitCode(), said.err());
    JsonNode after = JSON.readTree(take.judgement().toFile());
    assertEquals(before.at("/summary/carried").asInt() + 1, after.at("/summary/carried").asInt());
    String page = Files.readString(take.report(), StandardCharsets.UTF_8);
    assertTrue(page.contains("it comes back &lt;upside&gt; down"));
    assertTrue(page.contains("data:audio/mpeg"), "it can still be heard");
    assertTrue(Files.size(take.path().resolve(TakeFolder.PAPER)) > 10_000);

    for (String[] wrong : new String[][] {{"99", "varied"}, {"1", "varied"}, {"2", "lovely"}}) {
      Terminal no = Terminal.run("overrule", take.name(), wrong[0], "--as", wrong[1]);
      assertEquals(2, no.exitCode());
      assertEquals(1, no.err().lines().count(), no.err());
    }
    assertEquals(after, JSON.readTree(take.judgement().toFile()));
  }
}
