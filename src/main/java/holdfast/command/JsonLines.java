package holdfast.command;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Questions in, answers out: one JSON object a line, in order, in constant memory however many
 * lines there are. A line that cannot be answered gets an answer too, {@code {"error": …}}, that
 * names the line and the mend; the others go on.
 */
final class JsonLines {

  /** A line longer than this is not read to its end: 1 MiB holds 30,000 notes. */
  static final int LONGEST_LINE = 1 << 20;

  private static final ObjectMapper MAPPER = JsonMapper.builder().build();

  private static final ObjectWriter WRITER =
      MAPPER
          .writer()
          .without(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
          .without(JsonGenerator.Feature.FLUSH_PASSED_TO_STREAM)
          .without(SerializationFeature.FLUSH_AFTER_WRITE_VALUE);

  private JsonLines() {}

  /**
   * Answers every line of {@code in}; empty lines are passed over.
   *
   * @param answer from the parsed line to anything Jackson can write; throws {@link
   *     IllegalArgumentException} with the mend in its message where the line cannot be answered
   * @return the exit code: 0, or 2 where a line could not be answered
   */
  static int answer(Reader in, Writer out, Function<JsonNode, ?> answer) throws IOException {
    LineReader lines = new LineReader(in);
    BufferedWriter buffered = new BufferedWriter(out, 1 << 16);
    int exitCode = 0;
    for (Optional<String> line = lines.next(); line.isPresent(); line = lines.next()) {
      if (line.get().isBlank()) {
        continue;
      }
      Object said;
      try {
        said = answer.apply(parse(line.get()));
      } catch (IllegalArgumentException | holdfast.mistake.UserMistake mistake) {
        said = Map.of("error", "line " + lines.number() + ": " + mistake.getMessage());
        exitCode = 2;
      }
      WRITER.writeValue(buffered, said);
      buffered.write('\n');
      if (!lines.moreIsWaiting()) {
        // Whoever asks line by line gets the whole line before the next question.
        buffered.flush();
      }
    }
    buffered.flush();
    return exitCode;
  }

  private static JsonNode parse(String line) {
    JsonNode node;
    try {
      node = MAPPER.readTree(line);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(
          "this is not JSON (" + e.getOriginalMessage() + "); write one object a line", e);
    }
    if (!node.isObject()) {
      throw new IllegalArgumentException("write one JSON object a line, as {\"…\": …}");
    }
    return node;
  }

  /** Lines of bounded length, counted from 1. */
  private static final class LineReader {
    private final BufferedReader in;
    private int number;

    LineReader(Reader in) {
      this.in = new BufferedReader(in, 1 << 16);
    }

    Optional<String> next() throws IOException {
      StringBuilder line = new StringBuilder();
      int c = in.read();
      if (c < 0) {
        return Optional.empty();
      }
      number++;
      while (c >= 0 && c != '\n') {
        if (line.length() < LONGEST_LINE) {
          line.append((char) c);
        }
        c = in.read();
      }
      return Optional.of(line.toString());
    }

    int number() {
      return number;
    }

    boolean moreIsWaiting() throws IOException {
      return in.ready();
    }
  }
}
