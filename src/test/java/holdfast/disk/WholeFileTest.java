package holdfast.disk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {

  @TempDir Path folder;

  @Test
  void what_stood_there_before_is_replaced() throws IOException {
    Path file = Files.writeString(folder.resolve("Straße 小雪.txt"), "old");
    WholeFile.write(file, "new");
    assertEquals("new", Files.readString(file));
    assertEquals(List.of(file), left());
  }

  @Test
  void a_writer_that_fails_half_way_leaves_the_old_file_and_nothing_beside_it() throws IOException {
    Path file = Files.writeString(folder.resolve("take.mid"), "old");
    UserMistake mistake =
        assertThrows(
            UserMistake.class,
            () ->
                WholeFile.write(
                    file,
                    fresh -> {
                      Files.writeString(fresh, "half of");
                      throw new IOException("No space left on device");
                    }));
    assertEquals("old", Files.readString(file));
    assertEquals(List.of(file), left());
    assertTrue(mistake.getMessage().contains("take.mid"), mistake.getMessage());
    assertTrue(mistake.getMessage().contains("No space left"), mistake.getMessage());
  }

  @Test
  void a_missing_folder_and_a_folder_in_the_files_place_are_told() {
    assertTrue(
        assertThrows(
                UserMistake.class,
                () -> WholeFile.write(folder.resolve("nowhere").resolve("a.txt"), "x"))
            .getMessage()
            .contains("nowhere"));
    assertTrue(
        assertThrows(UserMistake.class, () -> WholeFile.write(folder, "x"))
            .getMessage()
            .contains("is a folder"));
  }

  @Test
  void a_name_as_long_as_a_name_can_be_is_written() throws IOException {
    // 255 bytes in UTF-8, the most that Linux and macOS have room for.
    Path file = folder.resolve("小".repeat(83) + ".txt.x");
    WholeFile.write(file, "new");
    assertEquals("new", Files.readString(file));
  }

  private List<Path> left() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }
}
