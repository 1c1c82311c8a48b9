package holdfast.book;

import holdfast.backing.Performance;
import holdfast.disk.WholeFile;
import holdfast.listening.Heard;
import holdfast.mistake.UserMistake;
import holdfast.practice.Plan;
import holdfast.report.Progress;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.log.TakeLog;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A running take on the disk: a log while it runs, and when it is over a folder with its MIDI file
 * and its report. A take that was broken off is finished at the next start.
 */
public final class KeptTake implements Keeper, AutoCloseable {

  /** So many takes of one chart within one second are no people's. */
  private static final int MOST_WITHIN_A_SECOND = 1000;

  private final TakeLog log;
  private final TakeFolder folder;
  private final TakeSettings settings;
  private final Performance performance;

  private KeptTake(TakeLog log, TakeFolder folder, TakeSettings settings, Performance performance) {
    this.log = log;
    this.folder = folder;
    this.settings = settings;
    this.performance = performance;
  }

  /** Where takes are kept. */
  public static Path takes() {
    return UserFolder.path().resolve(Book.TAKES);
  }

  /**
   * Starts to write a take down.
   *
   * @param takes the folder of all takes, which need not exist
   * @throws UserMistake where there is no room or no leave
   */
  public static KeptTake begin(Path takes, TakeSettings settings, Performance performance)
      throws IOException {
    makeFolder(takes);
    TakeLog log = startLog(takes, settings);
    String file = log.file().getFileName().toString();
    String name = file.substring(0, file.length() - Unfinished.LOG_ENDING.length());
    TakeFolder folder = new TakeFolder(takes.resolve(name));
    log.tempo(settings.tempo());
    makeFolder(folder.path());
    WholeFile.write(folder.path().resolve(TakeFolder.SETTINGS), settings.json());
    return new KeptTake(log, folder, settings, performance);
  }

  @Override
  public void hear(Heard heard) {
    log.hear(heard);
  }

  @Override
  public void phraseEnded(double heardUpToSeconds) {
    log.phraseEnded(heardUpToSeconds);
  }

  @Override
  public void mark(double seconds, String text) {
    log.mark(seconds, text);
  }

  @Override
  public void tempo(TempoMap beats) {
    log.tempo(beats);
  }

  @Override
  public Optional<String> trouble() {
    return log.trouble();
  }

  /** The folder of the take; it is there from the beginning. */
  public TakeFolder folder() {
    return folder;
  }

  /** Where a recording of the sound belongs, which may be written while the take runs. */
  public Path recording() {
    return folder.recording();
  }

  /** The take is over: writes its folder, and says where it is. */
  public List<String> finish(JudgedTake judged, Optional<String> student) throws IOException {
    return finish(judged, performance, student);
  }

  /**
   * The take is over: writes its folder, and says where it is.
   *
   * @param heard what sounded beside the player, with the line that a coach said meanwhile
   */
  public List<String> finish(JudgedTake judged, Performance heard, Optional<String> student)
      throws IOException {
    return finish(judged, heard, student, Optional.empty());
  }

  /**
   * The take is over: writes its folder, and says where it is.
   *
   * @param heard what sounded beside the player, with the line that a coach said meanwhile
   * @param plan what the student is told to practise next, to stand in the report
   */
  public List<String> finish(
      JudgedTake judged, Performance heard, Optional<String> student, Optional<Plan> plan)
      throws IOException {
    log.end(judged.setting().beats().secondsAt(judged.phrases().isEmpty() ? 0 : lastBeat(judged)));
    log.close();
    List<String> said = new ArrayList<>();
    TakeSettings known = settings.inTempo(judged.setting().beats());
    TakeSettings told = student.isPresent() ? known.by(student) : known;
    try {
      folder.write(judged, heard, told, earlier(told), plan);
      if (log.whole().equals(log.file())) {
        log.trouble().ifPresent(said::add);
        Unfinished.keep(log.file(), folder);
      } else {
        // There is room again.
        WholeFile.write(folder.path().resolve(TakeFolder.HEARD), Files.readAllBytes(log.whole()));
        Files.delete(log.file());
        Files.delete(log.whole());
      }
    } catch (UserMistake full) {
      throw log.trouble().map(where -> new UserMistake(where, full)).orElse(full);
    }
    said.add("The take and its report are in " + folder.path());
    return said;
  }

  /**
   * Adds to a finished take's report what takes a while, so that nobody waits for the rest of it:
   * see {@link TakeFolder#complete}.
   *
   * @throws UserMistake where there is no room or no leave
   */
  public void complete() {
    folder.complete(earlier(folder.settings()));
  }

  /** The student's takes of the same chart so far; a book that cannot be read has none. */
  private Progress earlier(TakeSettings told) {
    Path home = folder.path().toAbsolutePath().getParent().getParent();
    try (Book book = Book.open(home)) {
      return book.before(told);
    } catch (UserMistake unreadable) {
      return Progress.NONE;
    }
  }

  @Override
  public void close() {
    log.close();
  }

  private static double lastBeat(JudgedTake judged) {
    return judged.phrases().get(judged.phrases().size() - 1).endBeat();
  }

  private static void makeFolder(Path folder) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UserMistake(
          folder
              + " cannot be made ("
              + e.getMessage()
              + "); make room or leave for it, or set HOLDFAST_HOME to another folder",
          e);
    }
  }

  /** The log says by its name which folder the take has; two who start at once get two. */
  private static TakeLog startLog(Path takes, TakeSettings settings) {
    String name = name(settings);
    for (int i = 1; ; i++) {
      String fresh = i == 1 ? name : name + "-" + i;
      if (Files.notExists(takes.resolve(fresh))) {
        try {
          return TakeLog.start(
              takes.resolve(fresh + Unfinished.LOG_ENDING),
              Map.of(Unfinished.SETTINGS, settings.json()));
        } catch (UserMistake taken) {
          if (!(taken.getCause() instanceof FileAlreadyExistsException)
              || i == MOST_WITHIN_A_SECOND) {
            throw taken;
          }
        }
      }
    }
  }

  /** A name that sorts by time and says which chart it was. */
  static String name(TakeSettings settings) {
    String when =
        DateTimeFormatter.ofPattern("yyyy-MM-dd_HH-mm-ss", Locale.ROOT).format(settings.started());
    String chart = FileNames.readable(settings.title());
    return chart.isEmpty() ? when : when + "_" + chart;
  }
}
