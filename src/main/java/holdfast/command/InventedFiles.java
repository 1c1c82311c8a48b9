package holdfast.command;

import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.invent.Invented;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The inventing sessions among the takes. */
final class InventedFiles {

  private InventedFiles() {}

  /** All of them with their files, the oldest first. */
  static Map<Path, Invented> all(Path takes) {
    Map<Path, Invented> sessions = new LinkedHashMap<>();
    for (Path file : files(takes)) {
      sessions.put(file, Invented.read(file));
    }
    return sessions;
  }

  /**
   * An idea of the newest session.
   *
   * @param number counted from 1 among its different ideas
   */
  static List<Note> idea(Path takes, int number) {
    List<Path> files = files(takes);
    if (files.isEmpty()) {
      throw new UserMistake("nothing was invented yet; `holdfast invent Dm7` begins");
    }
    List<List<Note>> ideas = Invented.read(files.get(files.size() - 1)).ideas();
    if (number < 1 || number > ideas.size()) {
      throw new UserMistake(
          "--invented takes 1 to " + ideas.size() + " of the last session, not " + number);
    }
    return ideas.get(number - 1);
  }

  private static List<Path> files(Path takes) {
    if (!Files.isDirectory(takes)) {
      return List.of();
    }
    try (Stream<Path> folders = Files.list(takes)) {
      return folders
          .map(folder -> folder.resolve(Invented.FILE))
          .filter(Files::isRegularFile)
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UserMistake(takes + " cannot be read (" + e.getMessage() + ")", e);
    }
  }
}
