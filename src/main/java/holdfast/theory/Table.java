package holdfast.theory;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A readable table beside the classes: comment lines with {@code #}, a line of column names, then a
 * row a line with commas between the cells and double quotes round a cell that holds one.
 */
final class Table {

  private final String name;
  private final List<String> columns;
  private final List<Row> rows;

  private Table(String name, List<String> columns, List<Row> rows) {
    this.name = name;
    this.columns = columns;
    this.rows = rows;
  }

  /** One row, its cells asked for by column. */
  final class Row {
    private final List<String> cells;

    private Row(List<String> cells) {
      this.cells = cells;
    }

    /** The cell of the column, without blanks around it. */
    String get(String column) {
      int i = columns.indexOf(column);
      if (i < 0) {
        throw new IllegalStateException(name + " has no column " + column);
      }
      return cells.get(i);
    }

    /** The words of a cell, in order. */
    List<String> words(String column) {
      return split(get(column), " +");
    }

    /** The parts of a cell between semicolons, in order. */
    List<String> parts(String column) {
      return split(get(column), ";");
    }

    private static List<String> split(String cell, String separator) {
      List<String> parts = new ArrayList<>();
      if (!cell.isEmpty()) {
        for (String part : cell.split(separator, -1)) {
          parts.add(part.strip());
        }
      }
      return parts;
    }
  }

  /** Reads the table of that name that lies beside this class. */
  static Table named(String name) {
    try (InputStream in = Table.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the table " + name + " is missing from this build");
      }
      return read(name, new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException("the table " + name + " cannot be read", e);
    }
  }

  private static Table read(String name, BufferedReader in) throws IOException {
    List<Row> rows = new ArrayList<>();
    Table table = null;
    int number = 0;
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      List<String> cells = cells(line);
      if (table == null) {
        table = new Table(name, cells, rows);
      } else if (cells.size() != table.columns.size()) {
        throw new IllegalStateException(
            name
                + ", line "
                + number
                + ": "
                + cells.size()
                + " cells instead of "
                + table.columns.size());
      } else {
        rows.add(table.new Row(cells));
      }
    }
    if (table == null) {
      throw new IllegalStateException(name + " is empty");
    }
    return table;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        if (quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
          cell.append(c);
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString().strip());
    return cells;
  }

  /** The rows in order. */
  List<Row> rows() {
    return rows;
  }
}
