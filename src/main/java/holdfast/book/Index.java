package holdfast.book;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * A table of all takes that answers at once. Nothing stands in it that does not stand in the files:
 * where it is missing, broken or of another version it is thrown away and begins empty, and whoever
 * opens it fills it from the files. Several programs may have it open.
 */
final class Index implements AutoCloseable {

  /** Goes up whenever a column changes. */
  private static final int VERSION = 2;

  /** How long a program waits for another that writes; in milliseconds. */
  private static final int PATIENCE_MILLIS = 20_000;

  private static final Logger LOG = LoggerFactory.getLogger(Index.class);

  private static final List<String> TABLES =
      List.of(
          "CREATE TABLE IF NOT EXISTS take ("
              + "name TEXT PRIMARY KEY, stamp INTEGER NOT NULL, started TEXT NOT NULL,"
              + " student TEXT, student_key TEXT, chart TEXT NOT NULL, chart_key TEXT NOT NULL,"
              + " tempo REAL NOT NULL, way TEXT, idea TEXT NOT NULL, phrases INTEGER NOT NULL,"
              + " carried INTEGER NOT NULL, longest_run INTEGER NOT NULL,"
              + " restated INTEGER NOT NULL, fit REAL, drift_cents REAL, families TEXT NOT NULL,"
              + " lost_bars TEXT NOT NULL, feeling TEXT, overruled INTEGER NOT NULL,"
              + " notes TEXT NOT NULL, different INTEGER, said INTEGER, minutes REAL,"
              + " words TEXT NOT NULL) WITHOUT ROWID",
          "CREATE INDEX IF NOT EXISTS by_time ON take(started)",
          "CREATE INDEX IF NOT EXISTS by_student ON take(student_key, started)",
          "CREATE TABLE IF NOT EXISTS broken ("
              + "name TEXT PRIMARY KEY, stamp INTEGER NOT NULL, sentence TEXT NOT NULL)"
              + " WITHOUT ROWID");

  private static final String COLUMNS =
      "name, started, student, chart, tempo, way, idea, phrases, carried, longest_run, restated,"
          + " fit, drift_cents, families, lost_bars, feeling, overruled, notes, different, said,"
          + " minutes";

  private final Connection connection;
  private final boolean isFresh;

  private Index(Connection connection, boolean isFresh) {
    this.connection = connection;
    this.isFresh = isFresh;
  }

  /** Something that is asked of the database. */
  @FunctionalInterface
  private interface Asking<T> {
    T ask() throws SQLException;
  }

  /** The table was found broken; whoever has it open throws it away and begins anew. */
  static final class Broken extends Exception {
    private static final long serialVersionUID = 1L;

    Broken(SQLException cause) {
      super(cause.getMessage(), cause);
    }
  }

  /**
   * Opens the table in this file; begins a new one where there is none or it is of another version.
   */
  static Index open(Path file) throws Broken {
    try {
      Index index = connect("jdbc:sqlite:" + file.toAbsolutePath());
      if (index.version() != VERSION && index.hasTables()) {
        LOG.info("the book's table is of another version and is made anew");
        index.close();
        throwAway(file);
        index = connect("jdbc:sqlite:" + file.toAbsolutePath());
      }
      boolean isFresh = index.version() != VERSION;
      index.makeTables();
      return new Index(index.connection, isFresh);
    } catch (SQLException e) {
      throw new Broken(e);
    }
  }

  /** A table in memory, for a folder that cannot be written to. */
  static Index inMemory() {
    try {
      Index index = connect("jdbc:sqlite::memory:");
      index.makeTables();
      return new Index(index.connection, true);
    } catch (SQLException e) {
      throw new IllegalStateException("a table in memory cannot be made", e);
    }
  }

  /** Removes the table with all that belongs to it. */
  static void throwAway(Path file) {
    try {
      // The mark first: a log of the old table must never meet a new one.
      Path mark = mark(file);
      Files.write(mark, new byte[0]);
      for (String ending : List.of("-wal", "-shm", "-journal", "")) {
        Files.deleteIfExists(file.resolveSibling(file.getFileName() + ending));
      }
      Files.delete(mark);
    } catch (IOException e) {
      throw new UserMistake(
          file + " is broken and cannot be removed (" + e.getMessage() + "); delete it by hand", e);
    }
  }

  /** Whether somebody was killed while throwing the table away. */
  static boolean isHalfGone(Path file) {
    return Files.exists(mark(file));
  }

  private static Path mark(Path file) {
    return file.resolveSibling(file.getFileName() + ".making-anew");
  }

  private static Index connect(String address) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(PATIENCE_MILLIS);
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    // What is deleted is overwritten, so that a name does not stay behind in an unused page.
    config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
    return new Index(config.createConnection(address), false);
  }

  private int version() throws SQLException {
    return number("PRAGMA user_version");
  }

  private boolean hasTables() throws SQLException {
    return number("SELECT count(*) FROM sqlite_master") > 0;
  }

  private int number(String question) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(question)) {
      return rows.next() ? rows.getInt(1) : 0;
    }
  }

  private void makeTables() throws SQLException {
    if (version() == VERSION) {
      return;
    }
    inOneStep(
        () -> {
          try (Statement statement = connection.createStatement()) {
            for (String table : TABLES) {
              statement.execute(table);
            }
            statement.execute("PRAGMA user_version = " + VERSION);
          }
          return 0;
        });
  }

  /** Whether it began empty and has to be filled. */
  boolean isFresh() {
    return isFresh;
  }

  /** When each folder that is in the table was last changed, by its name; broken ones as well. */
  Map<String, Long> stamps() throws Broken {
    return ask(
        () -> {
          Map<String, Long> stamps = new HashMap<>();
          try (Statement statement = connection.createStatement();
              ResultSet rows =
                  statement.executeQuery(
                      "SELECT name, stamp FROM take UNION ALL SELECT name, stamp FROM broken")) {
            while (rows.next()) {
              stamps.put(rows.getString(1), rows.getLong(2));
            }
          }
          return stamps;
        });
  }

  /** A folder that was read. */
  record Row(Entry entry, long stamp) {}

  /** A folder that could not be read, and why, in one sentence. */
  record BrokenRow(String name, long stamp, String sentence) {}

  /** Puts lines into the table in one step, in the place of what stood there. */
  void put(Collection<Row> rows, Collection<BrokenRow> broken, Collection<String> gone)
      throws Broken {
    ask(
        () ->
            inOneStep(
                () -> {
                  remove(gone);
                  remove(rows.stream().map(row -> row.entry().take()).toList());
                  remove(broken.stream().map(BrokenRow::name).toList());
                  insert(rows);
                  insertBroken(broken);
                  return 0;
                }));
  }

  private void remove(Collection<String> names) throws SQLException {
    for (String table : List.of("take", "broken")) {
      try (PreparedStatement delete =
          connection.prepareStatement("DELETE FROM " + table + " WHERE name = ?")) {
        for (String name : names) {
          delete.setString(1, name);
          delete.addBatch();
        }
        int[] done = delete.executeBatch();
        LOG.trace("{} lines of {} removed", done.length, table);
      }
    }
  }

  private void insert(Collection<Row> rows) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO take ("
                + COLUMNS
                + ", stamp, student_key, chart_key, words)"
                + " VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)")) {
      for (Row row : rows) {
        Entry entry = row.entry();
        int at = 1;
        insert.setString(at++, entry.take());
        insert.setString(at++, entry.started().toString());
        insert.setString(at++, entry.student().orElse(null));
        insert.setString(at++, entry.chart());
        insert.setDouble(at++, entry.tempo());
        insert.setString(at++, entry.way().orElse(null));
        insert.setString(at++, entry.idea());
        insert.setInt(at++, entry.phrases());
        insert.setInt(at++, entry.carried());
        insert.setInt(at++, entry.longestRun());
        insert.setInt(at++, entry.restated());
        setNumber(insert, at++, entry.fit());
        setNumber(insert, at++, entry.driftCents());
        insert.setString(at++, entry.families());
        insert.setString(
            at++, entry.lostBars().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        insert.setString(at++, entry.feeling().map(SelfEstimate.Feeling::word).orElse(null));
        insert.setInt(at++, entry.overruled());
        insert.setString(at++, entry.notes());
        insert.setObject(at++, entry.fluency().map(Entry.Fluency::different).orElse(null));
        insert.setObject(at++, entry.fluency().map(Entry.Fluency::said).orElse(null));
        insert.setObject(at++, entry.fluency().map(Entry.Fluency::minutes).orElse(null));
        insert.setLong(at++, row.stamp());
        insert.setString(at++, entry.student().map(FileNames::folded).orElse(null));
        insert.setString(at++, FileNames.folded(entry.chart()));
        insert.setString(at, words(entry));
        insert.addBatch();
      }
      int[] done = insert.executeBatch();
      LOG.trace("{} lines written", done.length);
    }
  }

  private void insertBroken(Collection<BrokenRow> rows) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO broken (name, stamp, sentence) VALUES (?,?,?)")) {
      for (BrokenRow row : rows) {
        insert.setString(1, row.name());
        insert.setLong(2, row.stamp());
        insert.setString(3, row.sentence());
        insert.addBatch();
      }
      int[] done = insert.executeBatch();
      LOG.trace("{} broken folders noted", done.length);
    }
  }

  /** All that is searched for words, folded. */
  private static String words(Entry entry) {
    return FileNames.folded(
        String.join(
            "\n",
            entry.take(),
            entry.student().orElse(""),
            entry.chart(),
            entry.way().orElse(""),
            entry.idea(),
            entry.feeling().map(SelfEstimate.Feeling::word).orElse(""),
            entry.notes()));
  }

  /** The takes that are wanted, the newest first. */
  List<Entry> find(Search search) throws Broken {
    List<String> conditions = new ArrayList<>();
    List<Object> values = new ArrayList<>();
    search
        .student()
        .ifPresent(
            name -> {
              conditions.add("student_key = ?");
              values.add(FileNames.folded(name));
            });
    search
        .chart()
        .ifPresent(
            title -> {
              conditions.add("instr(chart_key, ?) > 0");
              values.add(FileNames.folded(title));
            });
    search
        .from()
        .ifPresent(
            day -> {
              conditions.add("started >= ?");
              values.add(day.toString());
            });
    search
        .to()
        .ifPresent(
            day -> {
              conditions.add("started < ?");
              values.add(day.plusDays(1).toString());
            });
    for (String word : search.words()) {
      conditions.add("instr(words, ?) > 0");
      values.add(FileNames.folded(word));
    }
    String where = conditions.isEmpty() ? "" : " WHERE " + String.join(" AND ", conditions);
    values.add(search.most());
    return ask(
        () ->
            select(
                "SELECT "
                    + COLUMNS
                    + " FROM take"
                    + where
                    + " ORDER BY started DESC, name DESC"
                    + " LIMIT ?",
                values));
  }

  private List<Entry> select(String question, List<Object> values) throws SQLException {
    List<Entry> found = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(question)) {
      for (int i = 0; i < values.size(); i++) {
        statement.setObject(i + 1, values.get(i));
      }
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          found.add(entry(rows));
        }
      }
    }
    return found;
  }

  private static Entry entry(ResultSet row) throws SQLException {
    int at = 1;
    return new Entry(
        row.getString(at++),
        LocalDateTime.parse(row.getString(at++)),
        Optional.ofNullable(row.getString(at++)),
        row.getString(at++),
        row.getDouble(at++),
        Optional.ofNullable(row.getString(at++)),
        row.getString(at++),
        row.getInt(at++),
        row.getInt(at++),
        row.getInt(at++),
        row.getInt(at++),
        number(row, at++),
        number(row, at++),
        row.getString(at++),
        Arrays.stream(row.getString(at++).split(" ", -1))
            .filter(bar -> !bar.isEmpty())
            .map(Integer::valueOf)
            .toList(),
        Optional.ofNullable(row.getString(at++)).map(SelfEstimate.Feeling::read),
        row.getInt(at++),
        row.getString(at++),
        fluency(row, at));
  }

  private static Optional<Entry.Fluency> fluency(ResultSet row, int at) throws SQLException {
    int different = row.getInt(at);
    return row.wasNull()
        ? Optional.empty()
        : Optional.of(new Entry.Fluency(different, row.getInt(at + 1), row.getDouble(at + 2)));
  }

  private static void setNumber(PreparedStatement to, int at, OptionalDouble number)
      throws SQLException {
    if (number.isPresent()) {
      to.setDouble(at, number.getAsDouble());
    } else {
      to.setNull(at, Types.REAL);
    }
  }

  private static OptionalDouble number(ResultSet row, int at) throws SQLException {
    double number = row.getDouble(at);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  /** A name, and how many takes belong to it. */
  record Tally(String name, int takes, String lastStarted) {}

  /** Students who played, with the number of their takes; the one who played last comes first. */
  List<Tally> students() throws Broken {
    return ask(
        () ->
            numbers(
                "SELECT student, count(*), max(started) FROM take WHERE student IS NOT NULL"
                    + " GROUP BY student_key ORDER BY max(started) DESC",
                List.of()));
  }

  /** Charts that were tried, by this student or by anybody. */
  List<Tally> charts(Optional<String> student) throws Broken {
    return grouped("chart", student);
  }

  /** Ideas that were carried, by this student or by anybody. */
  List<Tally> ideas(Optional<String> student) throws Broken {
    return grouped("idea", student);
  }

  private List<Tally> grouped(String column, Optional<String> student) throws Broken {
    String of = student.isPresent() ? " AND student_key = ?" : "";
    List<Object> values = new ArrayList<>();
    student.map(FileNames::folded).ifPresent(values::add);
    return ask(
        () ->
            numbers(
                String.format(
                    Locale.ROOT,
                    "SELECT %1$s, count(*), max(started) FROM take WHERE %1$s <> ''"
                        + " AND different IS NULL%2$s"
                        + " GROUP BY %1$s ORDER BY max(started) DESC",
                    column,
                    of),
                values));
  }

  private List<Tally> numbers(String question, List<Object> values) throws SQLException {
    List<Tally> numbers = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(question)) {
      for (int i = 0; i < values.size(); i++) {
        statement.setObject(i + 1, values.get(i));
      }
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          numbers.add(new Tally(rows.getString(1), rows.getInt(2), rows.getString(3)));
        }
      }
    }
    return numbers;
  }

  /** Folders that cannot be read, a sentence each. */
  List<String> brokenFolders() throws Broken {
    return ask(
        () -> {
          List<String> sentences = new ArrayList<>();
          try (Statement statement = connection.createStatement();
              ResultSet rows =
                  statement.executeQuery("SELECT sentence FROM broken ORDER BY name")) {
            while (rows.next()) {
              sentences.add(rows.getString(1));
            }
          }
          return sentences;
        });
  }

  /** How many takes are in it. */
  int size() throws Broken {
    return ask(() -> number("SELECT count(*) FROM take"));
  }

  /** Whether all its pages are sound. */
  void check() throws Broken {
    String said =
        ask(
            () -> {
              try (Statement statement = connection.createStatement();
                  ResultSet rows = statement.executeQuery("PRAGMA integrity_check(1)")) {
                return rows.next() ? rows.getString(1) : "nothing";
              }
            });
    if (!said.equals("ok")) {
      throw new Broken(new SQLException(said));
    }
  }

  /** Leaves nothing of what was deleted in the log beside the table. */
  void wipeLog() throws Broken {
    ask(() -> number("PRAGMA wal_checkpoint(TRUNCATE)"));
  }

  private <T> T inOneStep(Asking<T> change) throws SQLException {
    connection.setAutoCommit(false);
    try {
      T done = change.ask();
      connection.commit();
      return done;
    } catch (SQLException e) {
      connection.rollback();
      throw e;
    } finally {
      connection.setAutoCommit(true);
    }
  }

  private static <T> T ask(Asking<T> asking) throws Broken {
    try {
      return asking.ask();
    } catch (SQLException e) {
      throw told(e);
    }
  }

  /** What is no fault of the table's is told to the user; the rest means a broken table. */
  private static Broken told(SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException known ? known.getResultCode() : SQLiteErrorCode.UNKNOWN_ERROR;
    return switch (code) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          throw new UserMistake(
              "another program is busy with the book; wait a moment and try again", e);
      case SQLITE_FULL ->
          throw new UserMistake(
              "the disk is full, so the book's table cannot be written; make room, your takes are"
                  + " safe in their folders",
              e);
      default -> new Broken(e);
    };
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      LOG.warn("the book's table did not close well: {}", e.getMessage());
    }
  }
}
