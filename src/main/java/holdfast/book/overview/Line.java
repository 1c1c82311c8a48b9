package holdfast.book.overview;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What one returned take came to.
 *
 * @param file where it is, from the folder of the class, with {@code /} between names
 * @param state by what a change is known
 * @param outcome what was heard; or why nothing could be
 */
record Line(String file, State state, Outcome outcome) {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * By what a change is known.
   *
   * @param bytes the file's length
   * @param changedMillis when it was last changed
   * @param sum SHA-256 of its bytes
   * @param terms what it was judged by: {@link Terms#mark}
   */
  record State(long bytes, long changedMillis, String sum, String terms) {}

  /**
   * What was heard.
   *
   * @param trouble why nothing could be heard, in one sentence; then the rest is empty
   * @param student who played
   * @param started when, as far as is known, as ISO text; may be empty
   * @param chart the chart's title
   * @param report the report's file, from the folder of the overview
   * @param phrases phrases after the idea
   * @param carried of these, those that carried it
   * @param longestRun most carried in a row
   * @param families a letter for each phrase: r, v, n
   * @param lostBars the bars at which the idea was let go
   */
  record Outcome(
      Optional<String> trouble,
      String student,
      String started,
      String chart,
      String report,
      int phrases,
      int carried,
      int longestRun,
      String families,
      List<Integer> lostBars) {

    /** Copies. */
    Outcome {
      lostBars = List.copyOf(lostBars);
    }

    static Outcome failed(String student, String sentence) {
      return new Outcome(Optional.of(sentence), student, "", "", "", 0, 0, 0, "", List.of());
    }
  }

  /**
   * Tells the same take in another file. An answer is known by its bytes, whatever it is called;
   * two students may have handed in the same bare file.
   */
  String take() {
    if (state.sum().isEmpty() || outcome.trouble().isPresent()) {
      return file;
    }
    return state.sum() + (outcome.started().isEmpty() ? outcome.student() : "");
  }

  /** On one line. */
  String json() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("file", file);
    root.put("bytes", state.bytes());
    root.put("changed", state.changedMillis());
    root.put("sum", state.sum());
    root.put("terms", state.terms());
    outcome.trouble().ifPresent(sentence -> root.put("trouble", sentence));
    root.put("student", outcome.student());
    if (outcome.trouble().isEmpty()) {
      root.put("started", outcome.started());
      root.put("chart", outcome.chart());
      root.put("report", outcome.report());
      root.put("phrases", outcome.phrases());
      root.put("carried", outcome.carried());
      root.put("longestRun", outcome.longestRun());
      root.put("families", outcome.families());
      ArrayNode lost = root.putArray("lostBars");
      outcome.lostBars().forEach(lost::add);
    }
    return root.toString();
  }

  /** Reads a line; empty where it was cut off or is not ours. */
  static Optional<Line> read(String json) {
    try {
      JsonNode root = MAPPER.readTree(json);
      if (root == null || !root.path("file").isTextual()) {
        return Optional.empty();
      }
      List<Integer> lost = new ArrayList<>();
      root.path("lostBars").forEach(bar -> lost.add(bar.asInt()));
      return Optional.of(
          new Line(
              root.path("file").asText(),
              new State(
                  root.path("bytes").asLong(),
                  root.path("changed").asLong(),
                  root.path("sum").asText(),
                  root.path("terms").asText()),
              new Outcome(
                  Optional.ofNullable(root.path("trouble").textValue()),
                  root.path("student").asText(),
                  root.path("started").asText(),
                  root.path("chart").asText(),
                  root.path("report").asText(),
                  root.path("phrases").asInt(),
                  root.path("carried").asInt(),
                  root.path("longestRun").asInt(),
                  root.path("families").asText(),
                  lost)));
    } catch (JsonProcessingException cutOff) {
      return Optional.empty();
    }
  }
}
