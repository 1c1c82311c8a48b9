package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.melody.IdeaNotation;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assertions;

/** Ideas in our notation. */
class IdeaNotationFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_idea(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Hostile.read(
        bytes,
        () -> {
          var notes = IdeaNotation.parse(text);
          Assertions.assertEquals(notes, IdeaNotation.parse(IdeaNotation.print(notes)));
          return notes;
        });
  }
}
