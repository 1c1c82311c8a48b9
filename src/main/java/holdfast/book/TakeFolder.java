package holdfast.book;

import holdfast.backing.Performance;
import holdfast.disk.WholeFile;
import holdfast.listening.midi.MidiTakeWriter;
import holdfast.mistake.UserMistake;
import holdfast.report.JudgementJson;
import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.session.JudgedTake;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * One take on the disk: a folder of open files, which any program can read and which hold all that
 * is known of it.
 *
 * @param path the folder; its name begins with the day and the time, so that takes sort by age
 */
public record TakeFolder(Path path) {

  /** How the take was set up: {@link TakeSettings}. */
  public static final String SETTINGS = "take.settings";

  /** All that was heard, event by event, as it was written down while the take ran. */
  public static final String HEARD = "take.heard";

  /** What was played, with the backing. */
  public static final String MIDI = "take.mid";

  /** How it sounded, where it was recorded. */
  public static final String RECORDING = "take.wav";

  /** What was said about each phrase. */
  public static final String JUDGEMENT = "judgement.json";

  /** The same for reading. */
  public static final String REPORT = "report.html";

  /** What the teacher wrote about the take, in plain text. */
  public static final String NOTES = "notes.txt";

  /** How the student felt about it: {@link SelfEstimate}. */
  public static final String FELT = "felt.json";

  /** Which verdicts the teacher overruled. */
  public static final String OVERRULED = "overruled.json";

  /** The name of the take: its folder's. */
  public String name() {
    return path.getFileName().toString();
  }

  /** Where its report is. */
  public Path report() {
    return path.resolve(REPORT);
  }

  /** Where its recording is, or would be. */
  public Path recording() {
    return path.resolve(RECORDING);
  }

  /** Where its judgement is. */
  public Path judgement() {
    return path.resolve(JUDGEMENT);
  }

  /**
   * How it was set up.
   *
   * @throws UserMistake where the file is missing or broken
   */
  public TakeSettings settings() {
    Path file = path.resolve(SETTINGS);
    return TakeSettings.parse(
        text(file).orElseThrow(() -> new UserMistake(file + " is missing; bring it back")),
        file.toString());
  }

  /** What the teacher wrote about it. */
  public Optional<String> notes() {
    return text(path.resolve(NOTES)).map(String::strip).filter(text -> !text.isEmpty());
  }

  /** Keeps what the teacher has to say about it, in the place of what was said before. */
  public void note(String words) {
    WholeFile.write(path.resolve(NOTES), words.strip() + "\n");
  }

  /** How the student felt about it. */
  public Optional<SelfEstimate> felt() {
    Path file = path.resolve(FELT);
    return text(file).map(json -> SelfEstimate.parse(json, file.toString()));
  }

  /** Keeps how the student felt about it. */
  public void felt(SelfEstimate estimate) {
    WholeFile.write(path.resolve(FELT), estimate.json());
  }

  /**
   * Writes what is known when a take has come to its end: the notes, what was said, the page.
   *
   * @throws UserMistake where there is no room or no leave
   */
  void write(JudgedTake judged, Performance performance, TakeSettings settings) {
    WholeFile.write(path.resolve(SETTINGS), settings.json());
    MidiTakeWriter.write(TakeMidi.score(judged, performance).take(), path.resolve(MIDI));
    WholeFile.write(judgement(), JudgementJson.of(judged) + "\n");
    Occasion occasion = Occasion.of(settings.student(), settings.started().toLocalDate());
    WholeFile.write(report(), ReportPage.of(judged, occasion));
  }

  private static Optional<String> text(Path file) {
    try {
      return Files.isRegularFile(file)
          ? Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
          : Optional.empty();
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be read (" + e.getMessage() + "); check its permissions", e);
    }
  }
}
