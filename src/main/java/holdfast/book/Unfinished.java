package holdfast.book;

import holdfast.disk.WholeFile;
import holdfast.listening.microphone.KeptSound;
import holdfast.mistake.UserMistake;
import holdfast.practice.invent.Invented;
import holdfast.practice.invent.Inventing;
import holdfast.report.Progress;
import holdfast.session.JudgedTake;
import holdfast.session.log.BrokenOffTakes;
import holdfast.session.log.LoggedTake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Takes whose program was killed. What was played is in their logs; it is judged, and the log moves
 * into the folder of the take as its last step. So whoever is killed in the middle of finishing
 * leaves the log where the next one finds it, and two who finish the same take write the same
 * files.
 */
final class Unfinished {

  /** A running take writes {@code takes/NAME.log} beside its folder {@code takes/NAME}. */
  static final String LOG_ENDING = ".log";

  /** The setting of a log that holds all others. */
  static final String SETTINGS = "settings";

  private static final Logger LOG = LoggerFactory.getLogger(Unfinished.class);

  private Unfinished() {}

  /** Finishes every take that was broken off, and says so, a sentence each. */
  static List<String> finish(Path takes) {
    List<String> said = new ArrayList<>();
    for (Path log : BrokenOffTakes.in(takes, LOG_ENDING)) {
      try {
        String name = log.getFileName().toString();
        Path folder = takes.resolve(name.substring(0, name.length() - LOG_ENDING.length()));
        if (finish(log, new TakeFolder(folder))) {
          said.add("A take that was broken off is finished now; it is in " + folder);
        }
      } catch (IOException | UserMistake e) {
        // The log stays, so nothing is lost; the next start tries again.
        LOG.warn("the broken-off take {} waits: {}", log, e.getMessage());
      } catch (RuntimeException ours) {
        // One take that we fail on must not keep the book closed.
        LOG.error("the broken-off take {} waits", log, ours);
      }
    }
    return said;
  }

  /** Finishes one; false where nothing had been played and nothing is left of it. */
  private static boolean finish(Path log, TakeFolder folder) throws IOException {
    LoggedTake logged = LoggedTake.recover(log);
    if (logged.notes().isEmpty() && Files.notExists(folder.recording())) {
      if (Files.isDirectory(folder.path())) {
        removeHalfWritten(folder);
      }
      Files.deleteIfExists(folder.path().resolve(TakeFolder.SETTINGS));
      Files.deleteIfExists(folder.path());
      Files.deleteIfExists(log);
      return false;
    }
    TakeSettings written =
        TakeSettings.parse(logged.settings().getOrDefault(SETTINGS, ""), log.toString());
    TakeSettings settings = logged.tempo().map(written::inTempo).orElse(written);
    JudgedTake judged = Replay.judge(settings.setting(), logged);
    Files.createDirectories(folder.path());
    removeHalfWritten(folder);
    mendRecordings(folder);
    if (settings.way().equals(Optional.of(Invented.WAY))) {
      WholeFile.write(
          folder.path().resolve(Invented.FILE),
          Invented.json(Inventing.of(judged), chords(judged), judged));
    }
    folder.write(judged, settings.performance(), settings, Progress.NONE, Optional.empty());
    keep(log, folder);
    return true;
  }

  /** Over which chords ideas were invented, each once. */
  private static List<String> chords(JudgedTake take) {
    return take.setting().changes().spans().stream()
        .map(span -> span.harmony().display())
        .distinct()
        .toList();
  }

  /** What the killed program had not yet put into its place. */
  private static void removeHalfWritten(TakeFolder folder) throws IOException {
    try (Stream<Path> files = Files.list(folder.path())) {
      for (Path file : files.filter(f -> f.getFileName().toString().endsWith(".part")).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  /** A recording whose program was killed does not know its own length yet. */
  private static void mendRecordings(TakeFolder folder) throws IOException {
    try (Stream<Path> files = Files.list(folder.path())) {
      for (Path file : files.filter(f -> f.getFileName().toString().endsWith(".wav")).toList()) {
        KeptSound.mend(file);
      }
    }
  }

  /** The last step: the log moves into the folder. */
  static void keep(Path log, TakeFolder folder) throws IOException {
    if (Files.exists(log)) {
      Files.move(
          log,
          folder.path().resolve(TakeFolder.HEARD),
          StandardCopyOption.ATOMIC_MOVE,
          StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
