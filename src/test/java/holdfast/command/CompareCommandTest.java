package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CompareCommandTest {

  private static final ObjectMapper JSON = new ObjectMapper();

  private static final String SKEWED =
      """
      {"idea":[[0,0.5,64],[0.5,0.5,67],[1,1,71],[2,0.5,69],[2.5,1.5,67]],\
      "phrase":[[8,0.5,63],[8.5,0.5,67],[9,1,70],[10,0.5,68],[10.5,1.5,67]],\
      "ideaChord":"Cmaj7","phraseChord":"Abmaj7","key":"C","bpm":60}
      """;

  private final StringWriter out = new StringWriter();

  private int ask(String questions) throws IOException {
    return JsonLines.answer(new StringReader(questions), out, new CompareCommand()::answer);
  }

  private List<JsonNode> answers() throws IOException {
    List<JsonNode> answers = new ArrayList<>();
    for (String line : out.toString().split("\n", -1)) {
      if (!line.isBlank()) {
        answers.add(JSON.readTree(line));
      }
    }
    return answers;
  }

  @Test
  void a_sequence_skewed_to_its_chord_is_restated() throws IOException {
    assertEquals(0, ask(SKEWED));
    JsonNode answer = answers().get(0);
    assertEquals("sequence", answer.get("treatment").asText());
    assertEquals("restated", answer.get("family").asText());
    assertTrue(answer.get("restates").asDouble() > 0.9);
    assertTrue(answer.get("confidence").asDouble() > 0.9);
    assertEquals(1, answer.get("evidence").get("rhythm").asDouble());
    assertEquals(1, answer.get("evidence").get("contour").asDouble());
    assertEquals(1, answer.get("timeScale").asDouble());
    assertEquals(0, answer.get("shiftBeats").asDouble());
  }

  @Test
  void a_line_that_cannot_be_answered_gets_its_number_and_mend_and_the_rest_go_on()
      throws IOException {
    int exit =
        ask(SKEWED + "{\"idea\":[[0,1,60]]}\n" + SKEWED.replace("Abmaj7", "Abmay7") + SKEWED);
    assertEquals(2, exit);
    List<JsonNode> answers = answers();
    assertEquals(4, answers.size());
    assertTrue(
        answers.get(1).get("error").asText().startsWith("line 2: \"phrase\" must be a list"),
        answers.get(1)::toString);
    String unknown = answers.get(2).get("error").asText();
    assertTrue(unknown.startsWith("line 3: ") && unknown.contains("Abmaj7"), unknown);
    assertEquals("sequence", answers.get(3).get("treatment").asText());
  }

  @Test
  void notes_alone_are_enough() throws IOException {
    ask("{\"idea\":[[0,1,60],[1,1,64],[2,1,62]],\"phrase\":[[4,1,60],[5,1,64],[6,1,62]]}\n");
    assertEquals("literal", answers().get(0).get("treatment").asText());
  }

  @Test
  void an_unknown_player_is_refused_in_words() throws IOException {
    ask("{\"idea\":[[0,1,60]],\"phrase\":[[4,1,60]],\"player\":\"tuba\"}\n");
    assertEquals(
        "line 1: \"player\" must be \"keyboard\" or \"voice\", not \"tuba\"",
        answers().get(0).get("error").asText());
  }
}
