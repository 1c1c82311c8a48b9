package holdfast.theory;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads a table of other people's numbers, whose head must say where it comes from. */
final class Reference {

  private Reference() {}

  /** The rows of a reference file by column; fails when the head lacks its origin. */
  static List<Map<String, String>> rows(String name, char separator) {
    List<String> lines = lines(name);
    for (String field : List.of("source", "licence", "date", "tolerance")) {
      if (lines.stream().noneMatch(line -> line.startsWith("# " + field + ": "))) {
        throw new AssertionError(name + " does not tell its " + field);
      }
    }
    List<Map<String, String>> rows = new ArrayList<>();
    String[] columns = null;
    for (String line : lines) {
      if (line.startsWith("#") || line.isBlank()) {
        continue;
      }
      String[] cells = line.split(java.util.regex.Pattern.quote(String.valueOf(separator)), -1);
      if (columns == null) {
        columns = cells;
        continue;
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < columns.length; i++) {
        row.put(columns[i], cells[i]);
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<String> lines(String name) {
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new AssertionError(name, e);
    }
  }

  /** A cell of pitch classes: {@code 0 4 7}. */
  static PitchClassSet pitchClasses(String cell) {
    return PitchClassSet.of(words(cell).stream().mapToInt(Integer::parseInt).toArray());
  }

  /** The words of a cell. */
  static List<String> words(String cell) {
    return cell.isBlank() ? List.of() : List.of(cell.strip().split(" +", -1));
  }
}
