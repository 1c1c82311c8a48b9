package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PhrasesCommandTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private record Answer(int exitCode, List<JsonNode> lines) {}

  private static Answer ask(String... lines) throws Exception {
    StringWriter out = new StringWriter();
    int exitCode =
        JsonLines.answer(new StringReader(String.join("\n", lines)), out, PhrasesCommand::answer);
    List<JsonNode> answers = new ArrayList<>();
    for (String line : out.toString().lines().toList()) {
      answers.add(read(line));
    }
    return new Answer(exitCode, answers);
  }

  private static JsonNode read(String json) throws JsonProcessingException {
    return MAPPER.readTree(json);
  }

  private static String errorTo(String line) throws Exception {
    Answer answer = ask(line);
    assertEquals(2, answer.exitCode());
    return answer.lines().get(0).get("error").textValue();
  }

  @Test
  void each_line_is_answered_in_order_with_first_notes_and_times_of_decision() throws Exception {
    Answer answer =
        ask(
            "{\"notes\":[[0.1,0.4,60],[0.5,0.4,62],[2.0,0.4,64]],\"bpm\":60}",
            "{\"notes\":[[3,1,60]]}");
    assertEquals(0, answer.exitCode());
    JsonNode first = answer.lines().get(0);
    assertEquals(read("[0,2]"), first.get("phrases"));
    assertEquals(0.1, first.get("decided").get(0).doubleValue());
    double after = first.get("decided").get(1).doubleValue() - 0.9;
    assertTrue(after > 0 && after <= 0.35, "decided " + after + " s after the note-off");
    assertEquals(read("{\"phrases\":[0],\"decided\":[3.0]}"), answer.lines().get(1));
  }

  @Test
  void an_idea_that_is_known_splits_restatements_that_join() throws Exception {
    String notes = "\"notes\":[[0,0.5,60],[0.5,0.5,62],[1,1,64],[2,0.5,62],[2.5,0.5,64],[3,1,65]]";
    Answer answer =
        ask(
            "{" + notes + ",\"bpm\":60}",
            "{" + notes + ",\"bpm\":60,\"idea\":[[0,0.5,60],[0.5,0.5,62],[1,1,64]]}");
    assertEquals(read("[0]"), answer.lines().get(0).get("phrases"));
    assertEquals(read("[0,3]"), answer.lines().get(1).get("phrases"));
    assertEquals(read("[0.0,2.0]"), answer.lines().get(1).get("decided"));
  }

  @Test
  void a_line_that_cannot_be_answered_says_why_in_its_place_and_the_others_go_on()
      throws Exception {
    String good = "{\"notes\":[[0,1,60]]}";
    Answer answer = ask(good, "{\"notes\":[]}", good);
    assertEquals(2, answer.exitCode());
    assertEquals(3, answer.lines().size());
    assertEquals(
        "line 2: \"notes\" must be a list of notes, as [[onset, duration, midiPitch], …]",
        answer.lines().get(1).get("error").textValue());
    assertEquals(read("[0]"), answer.lines().get(2).get("phrases"));
  }

  @Test
  void whoever_asks_line_by_line_gets_each_answer_before_the_next_question() throws Exception {
    StringWriter out = new StringWriter();
    List<String> heardBefore = new ArrayList<>();
    Reader asking =
        new Reader() {
          private int asked;

          @Override
          public int read(char[] into, int offset, int length) {
            heardBefore.add(out.toString());
            if (asked++ == 2) {
              return -1;
            }
            char[] line = "{\"notes\":[[0,1,60]]}\n".toCharArray();
            System.arraycopy(line, 0, into, offset, line.length);
            return line.length;
          }

          @Override
          public boolean ready() {
            return false;
          }

          @Override
          public void close() {}
        };
    JsonLines.answer(asking, out, PhrasesCommand::answer);
    String answer = "{\"phrases\":[0],\"decided\":[0.0]}\n";
    assertEquals(List.of("", answer, answer + answer), heardBefore);
  }

  @Test
  void bad_values_are_named_with_the_mend() throws Exception {
    assertEquals(
        "line 1: note 2 of \"notes\" starts before the one in front; sort by onset",
        errorTo("{\"notes\":[[1,1,60],[0,1,60]]}"));
    assertEquals(
        "line 1: \"bpm\" must be 1 to 1000, not 0.0", errorTo("{\"notes\":[[1,1,60]],\"bpm\":0}"));
    assertEquals(
        "line 1: an \"idea\" is in beats; add \"bpm\", the beats a minute of the take",
        errorTo("{\"notes\":[[1,1,60]],\"idea\":[[0,1,60],[1,1,62]]}"));
    assertEquals(
        "line 1: an idea to follow has 2 to 64 notes, not 1",
        errorTo("{\"notes\":[[1,1,60]],\"bpm\":60,\"idea\":[[0,1,60]]}"));
  }
}
