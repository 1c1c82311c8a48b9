package holdfast.book;

import holdfast.book.Index.BrokenRow;
import holdfast.book.Index.Row;
import holdfast.mistake.UserMistake;
import holdfast.report.Progress;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Brings the table to what stands in the folders: reads the folders that changed since, takes in
 * new ones, strikes those that are gone. A folder's time changes whenever a file in it is made,
 * replaced or removed, which is how all our files are written.
 */
final class Filling {

  /** So many lines go into the table in one step; others wait no longer than that. */
  private static final int STEP = 500;

  /**
   * Some systems tell times to two seconds only: a folder that was changed this short a while ago
   * may change again without its time changing, and is read again next time. In milliseconds.
   */
  private static final long YOUNG_MILLIS = 2_100;

  /** No file of ours takes so long to write; in milliseconds. */
  private static final long LONGEST_WRITING_MILLIS = 60_000;

  /** The stamp of a folder that is to be read again next time. */
  private static final long AGAIN = 0;

  private final Path takes;
  private final Index index;

  Filling(Path takes, Index index) {
    this.takes = takes;
    this.index = index;
  }

  /** Reads what has changed. */
  void fill() throws Index.Broken, IOException {
    Map<String, Long> known = index.stamps();
    Map<String, Long> found = found(known);
    Set<String> gone = new HashSet<>(known.keySet());
    gone.removeAll(found.keySet());
    if (!gone.isEmpty()) {
      index.put(List.of(), List.of(), gone);
    }
    List<String> changed = new ArrayList<>();
    found.forEach(
        (name, stamp) -> {
          Long before = known.get(name);
          if (before == null || !before.equals(stamp)) {
            changed.add(name);
          }
        });
    changed.sort(null);
    for (int from = 0; from < changed.size(); from += STEP) {
      take(changed.subList(from, Math.min(changed.size(), from + STEP)), found);
    }
  }

  private void take(List<String> names, Map<String, Long> stamps) throws Index.Broken {
    long young = System.currentTimeMillis() - YOUNG_MILLIS;
    List<Reading> read =
        names.parallelStream()
            .map(
                name -> {
                  long stamp = stamps.get(name);
                  return read(name, stamp >= young ? AGAIN : stamp);
                })
            .toList();
    Collection<Row> rows = read.stream().flatMap(r -> r.row.stream()).toList();
    Collection<BrokenRow> broken = read.stream().flatMap(r -> r.broken.stream()).toList();
    Collection<String> unready =
        read.stream().filter(r -> r.row.isEmpty() && r.broken.isEmpty()).map(r -> r.name).toList();
    index.put(rows, broken, unready);
  }

  private record Reading(String name, Optional<Row> row, Optional<BrokenRow> broken) {}

  private Reading read(String name, long changed) {
    long stamp = changed;
    TakeFolder folder = new TakeFolder(takes.resolve(name));
    if (Files.notExists(folder.judgement()) && Files.exists(logOf(name))) {
      // It is being played, or its folder has just been deleted.
      return new Reading(name, Optional.empty(), Optional.empty());
    }
    try {
      if (holdsHalfWritten(folder)) {
        // Somebody writes it just now, or was killed while writing; looked at again next time.
        stamp = AGAIN;
      }
      if (folder.isToldBeforeOverruled()) {
        folder.tellAgain(Progress.NONE);
        return new Reading(
            name, Optional.of(new Row(EntryReader.read(folder), AGAIN)), Optional.empty());
      }
      return new Reading(
          name, Optional.of(new Row(EntryReader.read(folder), stamp)), Optional.empty());
    } catch (UserMistake e) {
      if (Files.notExists(folder.path())) {
        return new Reading(name, Optional.empty(), Optional.empty());
      }
      return new Reading(
          name, Optional.empty(), Optional.of(new BrokenRow(name, stamp, e.getMessage())));
    }
  }

  /** Whether files wait for their place; those of killed programs are removed in time. */
  private static boolean holdsHalfWritten(TakeFolder folder) {
    boolean holds = false;
    long longAgo = System.currentTimeMillis() - LONGEST_WRITING_MILLIS;
    try (Stream<Path> files = Files.list(folder.path())) {
      for (Path file : files.filter(f -> f.toString().endsWith(".part")).toList()) {
        if (Files.getLastModifiedTime(file).toMillis() < longAgo) {
          Files.deleteIfExists(file);
        } else {
          holds = true;
        }
      }
    } catch (IOException e) {
      return false;
    }
    return holds;
  }

  private Path logOf(String name) {
    return takes.resolve(name + Unfinished.LOG_ENDING);
  }

  /**
   * The folders that are there, and when each was last changed. With twenty thousand of them each
   * question to the system counts: there is one for each, on all cores, and a second one only where
   * the table does not know the answer.
   */
  private Map<String, Long> found(Map<String, Long> known) throws IOException {
    File all = takes.toFile();
    String[] names = all.list((folder, name) -> !name.endsWith(Unfinished.LOG_ENDING));
    if (names == null) {
      if (Files.isDirectory(takes)) {
        throw new IOException("its names cannot be listed");
      }
      return Map.of();
    }
    long[] changed = new long[names.length];
    IntStream.range(0, names.length)
        .parallel()
        .forEach(i -> changed[i] = new File(all, names[i]).lastModified());
    Map<String, Long> found = new HashMap<>(2 * names.length);
    for (int i = 0; i < names.length; i++) {
      Long before = known.get(names[i]);
      boolean isAsBefore = before != null && before == changed[i] && before != AGAIN;
      if (isAsBefore || Files.isDirectory(takes.resolve(names[i]), LinkOption.NOFOLLOW_LINKS)) {
        found.put(names[i], changed[i]);
      }
    }
    return found;
  }
}
