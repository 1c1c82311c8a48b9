package holdfast.session.log;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Finds the logs that nobody finished: the program was killed, or the machine stopped. */
public final class BrokenOffTakes {

  private BrokenOffTakes() {}

  /**
   * The logs in a folder that no running session writes, in the order of their names. A session
   * deletes its log once the take is safe elsewhere, so every one that is left waits to be
   * finished.
   *
   * @param folder need not exist
   * @param ending how the names of logs end, as {@code .log}
   */
  public static List<Path> in(Path folder, String ending) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().endsWith(ending))
          .filter(Files::isRegularFile)
          .filter(BrokenOffTakes::isBrokenOff)
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UserMistake(
          folder + " cannot be looked into (" + e.getMessage() + "); check its permissions", e);
    }
  }

  private static boolean isBrokenOff(Path file) {
    try {
      return !LoggedTake.recover(file).isBeingWritten();
    } catch (UserMistake notOurs) {
      return false;
    }
  }
}
