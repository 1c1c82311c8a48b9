package holdfast.command;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.fuzz.Hostile;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assertions;

/** Questions as JSON lines: whatever stands in them, each line gets an answer. */
class JsonLinesFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_questions_about_ideas(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Hostile.read(
        bytes,
        () -> {
          StringWriter out = new StringWriter();
          int code = JsonLines.answer(new StringReader(text), out, new CompareCommand()::answer);
          Assertions.assertEquals(code == 2, out.toString().contains("\"error\""));
          return out;
        });
  }
}
