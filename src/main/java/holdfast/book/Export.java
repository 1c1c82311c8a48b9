package holdfast.book;

import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** All open files in one ZIP file, to be kept elsewhere or read by other programs. */
public final class Export {

  private Export() {}

  /**
   * Packs takes, and what is kept of their students.
   *
   * @param of only this student's own folder; without one everybody's
   * @return how many takes were packed
   * @throws UserMistake where the file cannot be written
   */
  public static int write(
      List<TakeFolder> takes, Students students, Optional<String> of, Path file) {
    WholeFile.write(
        file,
        fresh -> {
          try (OutputStream out = Files.newOutputStream(fresh);
              ZipOutputStream zip = new ZipOutputStream(out)) {
            for (TakeFolder take : takes) {
              add(zip, take.path(), Book.TAKES + "/" + take.name());
            }
            Path own = of.map(students::folderOf).orElse(students.folder());
            if (Files.isDirectory(own)) {
              add(zip, own, of.isPresent() ? "students/" + own.getFileName() : "students");
            }
          }
        });
    return takes.size();
  }

  private static void add(ZipOutputStream zip, Path folder, String name) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        String inside = folder.relativize(file).toString().replace('\\', '/');
        if (!inside.endsWith(".part")) {
          zip.putNextEntry(new ZipEntry(name + "/" + inside));
          Files.copy(file, zip);
          zip.closeEntry();
        }
      }
    } catch (NoSuchFileException gone) {
      // Deleted meanwhile.
      return;
    }
  }
}
