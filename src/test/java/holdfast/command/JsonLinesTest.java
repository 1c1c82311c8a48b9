package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.Writer;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class JsonLinesTest {

  private static List<String> answers(String questions) throws IOException {
    StringWriter out = new StringWriter();
    JsonLines.answer(new StringReader(questions), out, JsonLinesTest::twice);
    return out.toString().lines().toList();
  }

  private static Map<String, Integer> twice(JsonNode question) {
    if (!question.has("n")) {
      throw new IllegalArgumentException("\"n\" is missing");
    }
    return Map.of("twice", 2 * question.get("n").asInt());
  }

  @Test
  void every_line_is_answered_in_order_and_a_bad_one_in_its_place() throws IOException {
    List<String> said = answers("{\"n\":1}\n\nnonsense\n[1]\n{}\n{\"n\":4}");
    assertEquals(5, said.size());
    assertEquals("{\"twice\":2}", said.get(0));
    assertTrue(said.get(1).startsWith("{\"error\":\"line 3: this is not JSON"), said.get(1));
    assertTrue(said.get(2).startsWith("{\"error\":\"line 4: write one JSON object"), said.get(2));
    assertEquals("{\"error\":\"line 5: \\\"n\\\" is missing\"}", said.get(3));
    assertEquals("{\"twice\":8}", said.get(4));
  }

  @Test
  void a_bad_line_leaves_with_exit_code_2_and_none_with_0() throws IOException {
    assertEquals(
        2, JsonLines.answer(new StringReader("x"), Writer.nullWriter(), JsonLinesTest::twice));
    assertEquals(
        0, JsonLines.answer(new StringReader(""), Writer.nullWriter(), JsonLinesTest::twice));
  }

  @Test
  void a_line_without_end_is_cut_off_and_told() throws IOException {
    String endless = "{\"n\": " + "1".repeat(JsonLines.LONGEST_LINE + 10) + "}\n{\"n\":2}";
    List<String> said = answers(endless);
    assertEquals(2, said.size());
    assertTrue(said.get(0).startsWith("{\"error\":\"line 1: "), said.get(0).substring(0, 60));
    assertEquals("{\"twice\":4}", said.get(1));
  }

  @Test
  void a_million_lines_pass_in_constant_memory() throws IOException {
    Reader many = new Repeated("{\"n\":3}\n", 1_000_000);
    long[] lines = {0};
    Writer counting =
        new Writer() {
          @Override
          public void write(char[] text, int from, int length) {
            for (int i = from; i < from + length; i++) {
              lines[0] += text[i] == '\n' ? 1 : 0;
            }
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    assertEquals(0, JsonLines.answer(many, counting, JsonLinesTest::twice));
    assertEquals(1_000_000, lines[0]);
  }

  /** The same line again and again, made as it is read. */
  private static final class Repeated extends Reader {
    private final String line;
    private final long length;
    private long at;

    Repeated(String line, int times) {
      this.line = line;
      this.length = (long) line.length() * times;
    }

    @Override
    public int read(char[] into, int from, int count) {
      if (at == length) {
        return -1;
      }
      int n = (int) Math.min(count, length - at);
      for (int i = 0; i < n; i++) {
        into[from + i] = line.charAt((int) (at++ % line.length()));
      }
      return n;
    }

    @Override
    public void close() {}
  }
}
