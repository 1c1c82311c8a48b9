package holdfast.chart;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Reads a table of facts from outside; its head must say where it comes from. */
final class Facts {

  private static final Path FOLDER = Path.of("src/test/resources/reference");

  private Facts() {}

  /** The rows of a reference file, their cells parted by semicolons. */
  static List<List<String>> rows(String name) {
    List<String> lines;
    try {
      lines = Files.readAllLines(FOLDER.resolve(name));
    } catch (IOException e) {
      throw new AssertionError(name + " cannot be read", e);
    }
    for (String field : List.of("source", "licence", "date", "tolerance")) {
      if (lines.stream().noneMatch(line -> line.startsWith("# " + field + ": "))) {
        throw new AssertionError(name + " does not tell its " + field);
      }
    }
    return lines.stream()
        .filter(line -> !line.startsWith("#"))
        .map(line -> Arrays.stream(line.split(";", -1)).map(String::strip).toList())
        .toList();
  }
}
