package holdfast.listening.midi;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file whole or not at all: beside it first, forced to the disk, then moved into its place
 * in one step.
 */
final class WholeFile {

  private WholeFile() {}

  static void write(Path file, byte[] bytes) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || Files.isDirectory(file)) {
      throw MidiFileException.of(file.toString(), "is a folder", "name a file in it");
    }
    if (!Files.isDirectory(folder)) {
      throw MidiFileException.of(folder.toString(), "is no folder", "make it first");
    }
    Path fresh = folder.resolve("." + file.getFileName() + "." + System.nanoTime() + ".part");
    try {
      try {
        fill(fresh, bytes);
        move(fresh, file);
      } finally {
        Files.deleteIfExists(fresh);
      }
    } catch (IOException e) {
      throw MidiFileException.of(
          file.toString(),
          "cannot be written (" + e.getMessage() + ")",
          "make room or choose another place",
          e);
    }
  }

  private static void fill(Path fresh, byte[] bytes) throws IOException {
    try (FileChannel out =
        FileChannel.open(fresh, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        out.write(left);
      }
      out.force(true);
    }
  }

  private static void move(Path fresh, Path file) throws IOException {
    try {
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
