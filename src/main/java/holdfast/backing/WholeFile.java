package holdfast.backing;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Writes a file whole or not at all: whatever stood there before stays until the new one is done.
 */
final class WholeFile {

  private WholeFile() {}

  /** Writes to the path that it is given. */
  interface Writer {
    void write(Path fresh) throws IOException;
  }

  /**
   * Lets the writer fill a fresh file beside this one, and puts it in its place.
   *
   * @throws UserMistake where the file cannot be written
   */
  static void write(Path file, Writer writer) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new UserMistake("there is no folder " + folder + " to write " + file + " into");
    }
    if (Files.isDirectory(file)) {
      throw new UserMistake(file + " is a folder; give the name of a file");
    }
    try {
      Path fresh = folder.resolve("." + file.getFileName() + "." + System.nanoTime() + ".part");
      try {
        writer.write(fresh);
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(fresh);
      }
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be written (" + e.getMessage() + "); choose another place", e);
    }
  }
}
