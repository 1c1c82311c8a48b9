package holdfast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Our own output, frozen: proves that it stayed the same, not that it is right. Run the tests with
 * {@code -Dholdfast.renew=true} to freeze what comes out now, and read the difference before you
 * commit it.
 */
public final class Golden {

  private static final Path FOLDER = Path.of("src", "test", "resources", "regression");

  private Golden() {}

  /** Holds the text against the file of this name. */
  public static void holds(String file, String text) {
    try {
      if (Boolean.getBoolean("holdfast.renew")) {
        Files.createDirectories(FOLDER);
        Files.writeString(FOLDER.resolve(file), text);
        return;
      }
      try (InputStream in = Golden.class.getResourceAsStream("/regression/" + file)) {
        if (in == null) {
          throw new AssertionError("regression/" + file + " is missing; renew it");
        }
        assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), text, file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
