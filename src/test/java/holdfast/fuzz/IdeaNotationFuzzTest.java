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
          var again = IdeaNotation.parse(IdeaNotation.print(notes));
          Assertions.assertEquals(notes.size(), again.size());
          for (int i = 0; i < notes.size(); i++) {
            Assertions.assertEquals(notes.get(i).pitch(), again.get(i).pitch());
            double beats = notes.get(i).durationBeats();
            Assertions.assertEquals(beats, again.get(i).durationBeats(), 1e-6 + 1e-9 * beats);
          }
          return notes;
        });
  }
}
