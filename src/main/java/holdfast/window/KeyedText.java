package holdfast.window;

import holdfast.disk.WholeFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A small text file of lines {@code name = value}, as a person can read and mend it. */
public final class KeyedText {

  private static final Logger LOG = LoggerFactory.getLogger(KeyedText.class);

  private KeyedText() {}

  /** What the file says; nothing where it is missing. Lines that say nothing are passed over. */
  public static Map<String, String> read(Path file) {
    Map<String, String> values = new TreeMap<>();
    if (!Files.exists(file)) {
      return values;
    }
    try {
      for (String line : Files.readString(file, StandardCharsets.UTF_8).lines().toList()) {
        int equals = line.indexOf('=');
        String name = line.substring(0, Math.max(0, equals)).strip();
        if (!name.isEmpty() && !name.startsWith("#")) {
          values.put(name, oneLine(line.substring(equals + 1)));
        }
      }
    } catch (IOException e) {
      LOG.warn("{} cannot be read ({}); I go on with the usual settings", file, e.getMessage());
    }
    return values;
  }

  private static String oneLine(String value) {
    return value.replaceAll("\\R", " ").strip();
  }

  /** Writes the file whole, in order of the names. */
  public static void write(Path file, String headline, Map<String, String> values)
      throws IOException {
    StringBuilder text = new StringBuilder("# ").append(headline).append('\n');
    new TreeMap<>(values)
        .forEach((name, value) -> text.append(name + " = " + oneLine(value) + '\n'));
    Files.createDirectories(file.getParent());
    WholeFile.write(file, text.toString());
  }
}
