package holdfast.command;

import holdfast.book.Student;
import holdfast.book.TakeFolder;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.invent.Invented;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The inventing sessions among the takes. */
final class InventedFiles {

  private InventedFiles() {}

  /** All of them, or this student's, with their files, the oldest first. */
  static Map<Path, Invented> all(Path takes, Optional<String> student) {
    Map<Path, Invented> sessions = new LinkedHashMap<>();
    for (Path file : files(takes, student)) {
      sessions.put(file, Invented.read(file));
    }
    return sessions;
  }

  /**
   * An idea of the newest session.
   *
   * @param student whose session; anybody's where nobody is named
   * @param number as it was told when the idea was played
   */
  static List<Note> idea(Path takes, Optional<String> student, int number) {
    List<Path> files = files(takes, student);
    if (files.isEmpty()) {
      throw new UserMistake("nothing was invented yet; `holdfast invent Dm7` begins");
    }
    SortedMap<Integer, List<Note>> ideas = Invented.read(files.get(files.size() - 1)).ideas();
    List<Note> idea = ideas.get(number);
    if (idea == null) {
      throw new UserMistake(
          "the last session had no different idea "
              + number
              + "; --invented takes "
              + ideas.keySet().stream().map(String::valueOf).collect(Collectors.joining(", ")));
    }
    return idea;
  }

  private static boolean isOf(Path take, String student) {
    return new TakeFolder(take)
        .settings()
        .student()
        .filter(name -> Student.isSame(name, student))
        .isPresent();
  }

  private static List<Path> files(Path takes, Optional<String> student) {
    if (!Files.isDirectory(takes)) {
      return List.of();
    }
    try (Stream<Path> folders = Files.list(takes)) {
      return folders
          .map(folder -> folder.resolve(Invented.FILE))
          .filter(Files::isRegularFile)
          .filter(file -> student.isEmpty() || isOf(file.getParent(), student.get()))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UserMistake(takes + " cannot be read (" + e.getMessage() + ")", e);
    }
  }
}
