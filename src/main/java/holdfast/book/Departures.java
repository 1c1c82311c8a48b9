package holdfast.book;

import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import holdfast.session.log.LoggedTake;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whom we are deleting: a file for each, written before the first take goes and removed after the
 * last trace is gone. One that is left says that the program was killed in between.
 */
record Departures(Path home) {

  private Path folder() {
    return home.resolve("deleting");
  }

  private Path file(String student) {
    return folder().resolve(FileNames.unique(student));
  }

  /** Writes down that this student goes. */
  void begin(String student) throws IOException {
    Files.createDirectories(folder());
    WholeFile.write(file(student), student);
  }

  /** All is gone. */
  void end(String student) {
    try {
      Files.deleteIfExists(file(student));
      Files.deleteIfExists(folder());
    } catch (IOException e) {
      throw new UserMistake(
          file(student) + " cannot be deleted (" + e.getMessage() + "); delete it by hand", e);
    }
  }

  /** Students whose deletion has begun. */
  List<String> begun() throws IOException {
    if (!Files.isDirectory(folder())) {
      return List.of();
    }
    List<String> names = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder())) {
      for (Path file : files.toList()) {
        if (file.getFileName().toString().endsWith(".part")) {
          // Killed before it was written: the deletion never began.
          Files.deleteIfExists(file);
        } else {
          names.add(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
        }
      }
    }
    if (names.isEmpty()) {
      Files.deleteIfExists(folder());
    }
    return names;
  }

  /** A take that runs would come back after its player is gone. */
  void refuseWhilePlaying(Path takes, String student) throws IOException {
    try (Stream<Path> files = Files.list(takes)) {
      for (Path log : files.filter(f -> f.toString().endsWith(Unfinished.LOG_ENDING)).toList()) {
        LoggedTake take = LoggedTake.recover(log);
        Optional<String> player =
            Optional.ofNullable(take.settings().get(Unfinished.SETTINGS))
                .map(json -> TakeSettings.parse(json, log.toString()))
                .flatMap(TakeSettings::student);
        if (player.isPresent() && Student.isSame(player.get(), student)) {
          throw new UserMistake(
              student + " is playing at this moment; stop that take first, then delete");
        }
      }
    }
  }
}
