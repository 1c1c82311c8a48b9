package holdfast.listening.midi;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;

/** The byte examples of the standard itself, from {@code reference/smf_examples.txt}. */
final class SmfReference {

  private SmfReference() {}

  static byte[] example(String name) {
    return lines(name).stream().map(SmfReference::bytes).findFirst().orElseThrow();
  }

  /** What stands behind this name, line by line. */
  static List<String> lines(String name) {
    try (InputStream in = SmfReference.class.getResourceAsStream("/reference/smf_examples.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> line.startsWith(name + ": "))
          .map(line -> line.substring(name.length() + 2).strip())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static byte[] bytes(String hex) {
    return HexFormat.ofDelimiter(" ").parseHex(hex);
  }
}
