package holdfast.session.log;

import holdfast.mistake.UserMistake;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

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
    // Names alone: among thousands of takes the logs are few.
    String[] logs = folder.toFile().list((all, name) -> name.endsWith(ending));
    if (logs == null) {
      throw new UserMistake(folder + " cannot be looked into; check its permissions");
    }
    return Arrays.stream(logs)
        .map(folder::resolve)
        .filter(Files::isRegularFile)
        .filter(BrokenOffTakes::isBrokenOff)
        .sorted()
        .toList();
  }

  private static boolean isBrokenOff(Path file) {
    try {
      return !LoggedTake.recover(file).isBeingWritten();
    } catch (UserMistake notOurs) {
      return false;
    }
  }
}
