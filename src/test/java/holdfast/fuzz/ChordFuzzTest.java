package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.theory.Harmony;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assertions;

/** Chord symbols. */
class ChordFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_chord_symbol(byte[] bytes) {
    String symbol = new String(bytes, StandardCharsets.UTF_8);
    Hostile.read(
        bytes,
        () -> {
          Harmony harmony = Harmony.parse(symbol);
          Assertions.assertEquals(
              harmony.pitchClasses(), Harmony.parse(harmony.text()).pitchClasses());
          return harmony.display();
        });
  }
}
