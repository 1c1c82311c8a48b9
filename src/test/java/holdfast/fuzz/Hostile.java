package holdfast.fuzz;

import com.sun.management.ThreadMXBean;
import holdfast.mistake.UserMistake;
import holdfast.theory.UnknownChordException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.junit.jupiter.api.Assertions;

/** Reads what a hostile file holds, within bounds of memory that depend on its length alone. */
public final class Hostile {

  /** What reading anything may cost, however short it is: tables, decoders, parsers. */
  private static final long FLAT_BYTES = 96L << 20;

  /** What each byte of a file may cost; a packed byte of sound or of zip holds many. */
  private static final long BYTES_A_BYTE = 20_000;

  private Hostile() {}

  /** Runs a reader on bytes: it answers, or says in one sentence why not. */
  public static void read(byte[] bytes, Callable<?> reader) {
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
    long cost = threads.getCurrentThreadAllocatedBytes() - before;
    long most = FLAT_BYTES + BYTES_A_BYTE * bytes.length;
    Assertions.assertTrue(cost <= most, () -> bytes.length + " bytes cost " + cost);
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
}
