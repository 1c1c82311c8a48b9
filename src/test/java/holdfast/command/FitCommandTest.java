package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;

class FitCommandTest {

  private record Answer(int exitCode, List<JsonNode> lines) {}

  private static Answer ask(String... lines) throws Exception {
    StringWriter out = new StringWriter();
    int exitCode =
        JsonLines.answer(new StringReader(String.join("\n", lines)), out, FitCommand::answer);
    ObjectMapper mapper = new ObjectMapper();
    List<JsonNode> answers =
        out.toString()
            .lines()
            .map(
                line -> {
                  try {
                    return mapper.readTree(line);
                  } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
                    throw new AssertionError(e);
                  }
                })
            .toList();
    return new Answer(exitCode, answers);
  }

  @Test
  void each_line_is_answered_in_order() throws Exception {
    Answer answer =
        ask(
            "{\"notes\":[[0,0.5,62],[0.5,0.5,65],[1,1,69]],\"changes\":[[0,\"Dm7\"]]}",
            "{\"notes\":[[0,1,60]],\"changes\":[[0,\"N.C.\"]],\"key\":\"C\",\"beatsPerBar\":3}");
    assertEquals(0, answer.exitCode());
    JsonNode first = answer.lines().get(0);
    assertEquals("chord tone", first.get("roles").get(0).textValue());
    assertEquals(3, first.get("roles").size());
    assertTrue(first.get("score").doubleValue() > 0.9);
    assertEquals("sits in the chords", first.get("word").textValue());
    JsonNode second = answer.lines().get(1);
    assertEquals("not judged", second.get("roles").get(0).textValue());
    assertTrue(second.get("score").isNull() && second.get("word").isNull());
  }

  @Test
  void a_line_that_cannot_be_answered_says_why_in_its_place() throws Exception {
    String good = "{\"notes\":[[0,1,60]],\"changes\":[[0,\"C\"]]}";
    Answer answer =
        ask(
            good,
            "{\"notes\":[[0,1,60]]}",
            "{\"notes\":[[0,1,60]],\"changes\":[[0,\"Hm7\"]]}",
            "{\"notes\":[],\"changes\":[[0,\"C\"]]}",
            "{\"notes\":[[0,1,60]],\"changes\":[[0]]}",
            "{\"notes\":[[0,1,60]],\"changes\":[[0,\"C\"]],\"beatsPerBar\":0}",
            "{\"notes\":[[0,1,60]],\"changes\":[[0,\"C\"]],\"key\":\"Q\"}",
            "{\"notes\":[[0,1,60]],\"changes\":[[1e999,\"C\"]]}",
            "nonsense",
            good);
    assertEquals(2, answer.exitCode());
    assertEquals(10, answer.lines().size());
    assertEquals(answer.lines().get(0), answer.lines().get(9));
    for (int i = 1; i < 9; i++) {
      JsonNode line = answer.lines().get(i);
      assertTrue(line.has("error"), line.toString());
      assertTrue(
          line.get("error").textValue().startsWith("line " + (i + 1) + ": "), line.toString());
    }
    assertEquals(
        "line 2: \"changes\" must be a list of chords, as [[0, \"Dm7\"], [4, \"G7\"]]",
        answer.lines().get(1).get("error").textValue());
  }
}
