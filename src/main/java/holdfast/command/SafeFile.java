package holdfast.command;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file whole or not at all: beside it first, forced to the disk, then moved over the old
 * one. Whatever goes wrong, what stood there before still stands there.
 */
final class SafeFile {

  private SafeFile() {}

  /**
   * Writes text in UTF-8.
   *
   * @throws UserMistake where the folder is missing, full, or may not be written to
   */
  static void write(Path file, String text) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(file)) {
      throw new UserMistake(file + " is a folder; name a file in it");
    }
    Path beside = folder.resolve(file.getFileName() + ".part");
    try {
      try (FileChannel out =
          FileChannel.open(
              beside,
              StandardOpenOption.CREATE,
              StandardOpenOption.TRUNCATE_EXISTING,
              StandardOpenOption.WRITE)) {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
          out.write(bytes);
        }
        out.force(true);
      }
      move(beside, file);
    } catch (NoSuchFileException e) {
      throw new UserMistake("the folder " + folder + " does not exist; make it first", e);
    } catch (AccessDeniedException e) {
      throw new UserMistake(folder + " may not be written to; choose another folder", e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be written (" + e.getMessage() + "); free some room or choose another",
          e);
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
