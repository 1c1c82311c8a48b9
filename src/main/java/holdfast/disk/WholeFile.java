package holdfast.disk;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Writes a file whole or not at all: beside it first, forced to the disk, then moved into its place
 * in one step. Whatever goes wrong, what stood there before still stands there.
 */
public final class WholeFile {

  private WholeFile() {}

  /** Writes to the path that it is given. */
  @FunctionalInterface
  public interface Filling {
    /** Fills the fresh file, which does not exist yet. */
    void fill(Path fresh) throws IOException;
  }

  /**
   * Writes text in UTF-8.
   *
   * @throws UserMistake where the file cannot be written
   */
  public static void write(Path file, String text) {
    write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Writes bytes.
   *
   * @throws UserMistake where the file cannot be written
   */
  public static void write(Path file, byte[] bytes) {
    write(file, fresh -> Files.write(fresh, bytes, StandardOpenOption.CREATE_NEW));
  }

  /**
   * Lets somebody fill a fresh file beside this one, and puts it in its place.
   *
   * @throws UserMistake where the file cannot be written
   */
  public static void write(Path file, Filling filling) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(file)) {
      throw new UserMistake(file + " is a folder; name a file in it");
    }
    if (!Files.isDirectory(folder)) {
      throw new UserMistake(
          "there is no folder "
              + folder
              + " to write "
              + file.getFileName()
              + " into; make it first");
    }
    // Not by the file's own name, which may be as long as a name can be.
    Path fresh = folder.resolve("." + UUID.randomUUID() + ".part");
    try {
      try {
        filling.fill(fresh);
        force(fresh);
        move(fresh, file);
      } finally {
        Files.deleteIfExists(fresh);
      }
    } catch (AccessDeniedException e) {
      throw new UserMistake(folder + " may not be written to; choose another folder", e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be written (" + e.getMessage() + "); make room or choose another place",
          e);
    }
  }

  private static void force(Path fresh) throws IOException {
    try (FileChannel out = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
      out.force(true);
    }
  }

  private static void move(Path fresh, Path file) throws IOException {
    try {
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
