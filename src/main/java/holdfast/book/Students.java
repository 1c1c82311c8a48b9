package holdfast.book;

import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is kept of each student beside the takes: a folder for each, whatever belongs to the student
 * in it, so that it goes when the student goes.
 *
 * @param folder the folder of these folders, which need not exist
 */
public record Students(Path folder) {

  private static final String FILE = "student.json";

  /** The folder of things that belong to this student, such as ideas; need not exist yet. */
  public Path folderOf(String name) {
    return folder.resolve(FileNames.unique(Student.cleanName(name)));
  }

  /** What is known of the student with this name. */
  public Optional<Student> find(String name) {
    Path file = folderOf(name).resolve(FILE);
    return Files.isRegularFile(file) ? Optional.of(read(file)) : Optional.empty();
  }

  /** Keeps what is known of a student, in the place of what was known before. */
  public void keep(Student student) {
    Path own = folderOf(student.name());
    try {
      Files.createDirectories(own);
    } catch (IOException e) {
      throw new UserMistake(
          own + " cannot be made (" + e.getMessage() + "); make room or leave for it", e);
    }
    WholeFile.write(own.resolve(FILE), student.json());
  }

  /** All students of whom something is kept, in the order of their names. */
  public List<Student> all() {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<Student> all = new ArrayList<>();
    try (Stream<Path> folders = Files.list(folder)) {
      folders
          .map(own -> own.resolve(FILE))
          .filter(Files::isRegularFile)
          .map(Students::read)
          .forEach(all::add);
    } catch (IOException e) {
      throw new UserMistake(
          folder + " cannot be read (" + e.getMessage() + "); check its permissions", e);
    }
    all.sort(Comparator.comparing(student -> FileNames.folded(student.name())));
    return all;
  }

  private static Student read(Path file) {
    try {
      return Student.parse(
          new String(Files.readAllBytes(file), StandardCharsets.UTF_8), file.toString());
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be read (" + e.getMessage() + "); check its permissions", e);
    }
  }
}
