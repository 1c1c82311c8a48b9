package holdfast.book;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * Folders on their way out. A folder is moved here in one step and then emptied, so that a take is
 * there whole or not at all, wherever the program was killed; what is left here is deleted at the
 * next start.
 */
record Trash(Path folder) {

  /** Deletes a folder with all that is in it; one that is gone already is no mistake. */
  void delete(Path doomed) {
    try {
      Files.createDirectories(folder);
      Path here = folder.resolve(Long.toString(System.nanoTime(), Character.MAX_RADIX));
      Files.move(doomed, here, StandardCopyOption.ATOMIC_MOVE);
      deleteAll(here);
    } catch (NoSuchFileException gone) {
      // Another program was quicker.
      return;
    } catch (IOException e) {
      throw new UserMistake(
          doomed
              + " cannot be deleted ("
              + e.getMessage()
              + "); close what has it open and try again",
          e);
    }
  }

  /** Deletes what a killed program left. */
  void empty() throws IOException {
    if (Files.isDirectory(folder)) {
      deleteAll(folder);
    }
  }

  /** Links are deleted and not followed. */
  private static void deleteAll(Path top) throws IOException {
    Files.walkFileTree(
        top,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.deleteIfExists(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
            if (e instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw e;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException e) throws IOException {
            if (e != null) {
              throw e;
            }
            Files.deleteIfExists(dir);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
