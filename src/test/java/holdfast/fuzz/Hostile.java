package holdfast.fuzz;

import com.sun.management.ThreadMXBean;
import holdfast.mistake.UserMistake;
import holdfast.theory.UnknownChordException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;

/** Reads what a hostile file holds, within bounds of memory that depend on its length alone. */
public final class Hostile {

  /** What reading anything may cost, however short it is: tables, decoders, parsers. */
  private static final long FLAT_BYTES = 96L << 20;

  /** While it searches, the fuzzer instruments classes in the same thread, which costs as well. */
  private static final long FUZZING_BYTES = System.getenv("JAZZER_FUZZ") == null ? 0 : 1L << 30;

  /** What each byte of a file may cost; a packed byte of sound or of zip holds many. */
  private static final long BYTES_A_BYTE = 20_000;

  /** A reader that has not answered by now never will: the largest file here takes under 1 s. */
  private static final Duration HANGS = Duration.ofSeconds(60);

  private Hostile() {}

  /** Runs a reader on bytes: it answers, or says in one sentence why not. */
  public static void read(byte[] bytes, Callable<?> reader) {
    long most = FLAT_BYTES + FUZZING_BYTES + BYTES_A_BYTE * bytes.length;
    if (costInTime(reader) > most) {
      // The first time counts the loading of classes and the fuzzer's own work on them.
      long again = costInTime(reader);
      Assertions.assertTrue(again <= most, () -> bytes.length + " bytes cost " + again);
    }
  }

  private static long costInTime(Callable<?> reader) {
    return Assertions.assertTimeoutPreemptively(HANGS, () -> cost(reader));
  }

  private static long cost(Callable<?> reader) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    try {
      reader.call();
    } catch (UserMistake | UnknownChordException told) {
      String sentence = String.valueOf(told.getMessage());
      Assertions.assertFalse(sentence.isBlank() || sentence.equals("null"), "nothing was said");
      Assertions.assertTrue(sentence.length() < 2_000, "more than a sentence: " + sentence);
    } catch (RuntimeException | Error crash) {
      throw crash;
    } catch (Exception crash) {
      throw new AssertionError(crash);
    }
    return threads.getCurrentThreadAllocatedBytes() - before;
  }

  /** Runs a reader on a file that holds the bytes. */
  public static void readFile(byte[] bytes, String ending, Consumer<Path> reader) {
    try {
      Path file = Files.createTempFile("hostile", ending);
      try {
        Files.write(file, bytes);
        read(
            bytes,
            () -> {
              reader.accept(file);
              return true;
            });
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs a reader on a folder that holds a file of this name, which may lie deeper. */
  public static void readFolder(byte[] bytes, String name, Consumer<Path> reader) {
    try {
      Path folder = Files.createTempDirectory("hostile");
      try {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.write(file, bytes);
        read(
            bytes,
            () -> {
              reader.accept(folder);
              return true;
            });
      } finally {
        delete(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }
}
