package holdfast.book.overview;

import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.book.assignment.Answer;
import holdfast.chart.Chart;
import holdfast.listening.audio.EarTape;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.midi.BarOne;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.RecordedTake;
import holdfast.listening.midi.TakePlacement;
import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.session.Coach;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Renderings;
import holdfast.session.Setting;
import holdfast.session.SoundTake;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The job of judging one returned take: a file in, an outcome and a report out. It knows no other
 * take, keeps nothing, and may run in any thread, process or machine; takes of one run may share
 * what is rendered of their backing.
 */
final class ReturnedTake {

  /** Browsers and learning platforms like to rename what they do not know. */
  private static final List<String> ANSWERS = List.of(Answer.ENDING, ".zip");

  private static final byte[] ZIP = {'P', 'K', 3, 4};

  private static final List<String> MIDI = List.of(".mid", ".midi", ".smf");
  private static final List<String> SOUND = List.of(".wav", ".mp3", ".ogg", ".flac", ".m4a");

  private ReturnedTake() {}

  /** A take with what its report has to say of how it was heard. */
  private record Judged(JudgedTake take, List<String> remarks) {}

  /** Whether a file of this name may be a take. */
  static boolean isOne(Path file) {
    return ends(file, ANSWERS) || ends(file, MIDI) || ends(file, SOUND);
  }

  private static boolean ends(Path file, List<String> endings) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return endings.stream().anyMatch(name::endsWith);
  }

  /** What tells how a file of this name is judged: an answer brings its own terms. */
  static String mark(String name, Terms terms) {
    return (ends(Path.of(name), ANSWERS) ? Terms.NONE : terms).mark();
  }

  private static boolean isZip(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(ZIP.length), ZIP);
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Judges a take.
   *
   * @param backing what recordings were played along to; empty where the chart is not known
   * @param student whose it is, where the file itself does not say
   * @param report where its report goes
   * @param reportName the report's name in the outcome
   * @throws UserMistake where it cannot be judged; one sentence
   */
  static Line.Outcome judge(
      Path file,
      String student,
      Terms terms,
      Optional<Renderings> backing,
      Path report,
      String reportName) {
    if (ends(file, ANSWERS) || isZip(file)) {
      return answer(file, student, report, reportName);
    }
    Chart chart =
        terms
            .chart()
            .orElseThrow(
                () ->
                    new UserMistake(
                        file.getFileName()
                            + " does not say what it was played over; name its chart"));
    Judged judged =
        ends(file, MIDI)
            ? new Judged(midi(file, chart, terms), List.of())
            : sound(file, chart, terms, backing.orElseThrow());
    Occasion occasion = Occasion.UNKNOWN.by(Optional.of(student)).remarking(judged.remarks());
    write(report, ReportPage.of(judged.take(), occasion));
    return outcome(judged.take(), student, "", reportName);
  }

  private static Line.Outcome answer(Path file, String student, Path report, String reportName) {
    Path unpacked = null;
    try {
      unpacked = Files.createTempDirectory("holdfast-answer");
      TakeFolder take = Answer.unpack(file, unpacked);
      TakeSettings settings = take.settings();
      JudgedTake judged = take.judged();
      String who = settings.student().filter(own -> !isMore(student, own)).orElse(student);
      Occasion occasion =
          Occasion.of(Optional.of(who), settings.started().toLocalDate()).through(settings.input());
      write(report, ReportPage.of(judged, occasion));
      return outcome(judged, who, settings.started().toString(), reportName);
    } catch (IOException e) {
      throw new UserMistake(
          "there is no room to unpack " + file + " (" + e.getMessage() + "); make some", e);
    } finally {
      if (unpacked != null) {
        remove(unpacked);
      }
    }
  }

  /** Whether a teacher has put it as more than the student says: {@code Mira B} for Mira. */
  private static boolean isMore(String student, String own) {
    return student.length() > own.length()
        && student.toLowerCase(Locale.ROOT).startsWith(own.toLowerCase(Locale.ROOT));
  }

  /** Not forced to the disk: a page that a power cut takes along can be made again. */
  private static void write(Path report, String page) {
    Path fresh = report.resolveSibling(report.getFileName() + ".part");
    try {
      Files.writeString(fresh, page);
      Files.move(fresh, report, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UserMistake(
          report + " cannot be written (" + e.getMessage() + "); make room on the disk", e);
    }
  }

  private static void remove(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      // The system clears its own folder of temporary files.
      return;
    }
  }

  private static JudgedTake midi(Path file, Chart chart, Terms terms) {
    RecordedTake recorded = MidiTakeFile.read(file);
    LineChoice line = LineChoice.of(recorded, Optional.empty(), OptionalInt.empty());
    TakePlacement placement =
        new BarOne(chart.metre(), terms.beatsPerMinute())
            .of(recorded, line.line(), OptionalDouble.empty());
    Setting setting = Setting.of(chart, placement.tempo(), terms.player(), given(chart, terms));
    return Coach.judge(setting, line.part().notes(), phrase -> {});
  }

  /** As one take by itself is judged, with what is rendered for it shared with the others. */
  private static Judged sound(Path file, Chart chart, Terms terms, Renderings backing) {
    try (EarTape tape = SoundFile.tape(file)) {
      SoundTake heard = SoundTake.hear(tape, backing, terms.profile(), OptionalDouble.empty());
      Player plays = terms.profile().sings() ? Player.VOICE : Player.UNKNOWN;
      Setting setting =
          Setting.of(backing.arrangement(), heard.beats(), plays, given(chart, terms));
      return new Judged(Coach.judge(setting, heard.notes(), phrase -> {}), List.of(heard.barOne()));
    }
  }

  private static Optional<Motif> given(Chart chart, Terms terms) {
    return terms.idea().map(notes -> Motif.over(chart.changes().at(0).harmony(), notes));
  }

  private static Line.Outcome outcome(
      JudgedTake judged, String student, String started, String reportName) {
    return new Line.Outcome(
        Optional.empty(),
        student,
        started,
        judged.setting().chart().title(),
        reportName,
        judged.counts().phrases(),
        judged.counts().carried(),
        judged.counts().longestRun(),
        judged.phrases().stream()
            .filter(phrase -> !phrase.statesTheIdea())
            .map(ReturnedTake::letter)
            .collect(Collectors.joining()),
        judged.counts().lost().stream().map(phrase -> phrase.place().bar()).toList());
  }

  private static String letter(JudgedPhrase phrase) {
    Family family = phrase.verdict().family();
    return family.word().substring(0, 1);
  }
}
