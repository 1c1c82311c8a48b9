package holdfast.backing.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputLatenciesTest {

  @TempDir Path folder;

  @Test
  void a_measured_latency_is_kept_for_its_device_alone() throws IOException {
    Path file = folder.resolve("deep").resolve("latency.properties");
    OutputLatencies.unmeasured().with("Headphones [hw:1,0]", 41.5).write(file);
    OutputLatencies read = OutputLatencies.read(file);
    assertEquals(41_500_000, read.nanos("Headphones [hw:1,0]"));
    assertEquals(15_000_000, read.nanos("Loudspeaker"));
  }

  @Test
  void a_line_without_a_number_is_told_with_its_place() throws IOException {
    Path file = Files.writeString(folder.resolve("latency.properties"), "Loudspeaker=soon\n");
    UserMistake mistake = assertThrows(UserMistake.class, () -> OutputLatencies.read(file));
    assertEquals(
        file + ", Loudspeaker: \"soon\" is not a number of milliseconds", mistake.getMessage());
  }
}
