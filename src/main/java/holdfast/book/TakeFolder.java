package holdfast.book;

import holdfast.backing.Performance;
import holdfast.chart.MusicXmlMelody;
import holdfast.disk.WholeFile;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.midi.BarOne;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.MidiTakeWriter;
import holdfast.listening.midi.RecordedTake;
import holdfast.listening.midi.TakePlacement;
import holdfast.mistake.UserMistake;
import holdfast.practice.Plan;
import holdfast.practice.invent.Invented;
import holdfast.report.JudgementJson;
import holdfast.report.Listening;
import holdfast.report.Occasion;
import holdfast.report.OverrulingJson;
import holdfast.report.PhraseSounds;
import holdfast.report.PhrasesCsv;
import holdfast.report.PlanJson;
import holdfast.report.Progress;
import holdfast.report.ReportPage;
import holdfast.report.ReportPdf;
import holdfast.report.SoloSheet;
import holdfast.report.SoundBeside;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import holdfast.session.Setting;
import holdfast.session.log.LoggedTake;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

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

  /** The report on paper. */
  public static final String PAPER = "report.pdf";

  /**
   * How it sounds with its band: played again by our synthesizer where it was not recorded, the
   * recording over the band where that was heard through headphones.
   */
  public static final String SOUND = "sound.wav";

  /** What the student was told to practise next. */
  public static final String NEXT = "next.json";

  /** What the teacher wrote about the take, in plain text. */
  public static final String NOTES = "notes.txt";

  /** How the student felt about it: {@link SelfEstimate}. */
  public static final String FELT = "felt.json";

  /** The solo with its chords and verdicts, for notation programs. */
  public static final String SOLO = "solo.musicxml";

  /** The phrases as a table, for spreadsheets. */
  public static final String PHRASES = "phrases.csv";

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
  void write(
      JudgedTake judged,
      Performance performance,
      TakeSettings settings,
      Progress earlier,
      Optional<Plan> plan) {
    WholeFile.write(path.resolve(SETTINGS), settings.json());
    plan.ifPresent(next -> WholeFile.write(path.resolve(NEXT), PlanJson.of(next)));
    MidiTakeWriter.write(TakeMidi.score(judged, performance).take(), path.resolve(MIDI));
    tell(judged, settings, earlier);
  }

  /** Writes what is said about the take; the page last. */
  private void tell(JudgedTake judged, TakeSettings settings, Progress earlier) {
    JudgedTake told = judged.overruledBy(overrulings());
    WholeFile.write(judgement(), JudgementJson.of(told) + "\n");
    WholeFile.write(path.resolve(SOLO), MusicXmlMelody.write(SoloSheet.of(told)));
    WholeFile.write(path.resolve(PHRASES), PhrasesCsv.of(told));
    removeWhatIsOld();
    Occasion occasion = occasion(told, settings, earlier, List.of());
    WholeFile.write(report(), ReportPage.of(told, occasion));
  }

  /** A page of paper must not tell what the page does not tell any longer. */
  private void removeWhatIsOld() {
    try {
      Files.deleteIfExists(path.resolve(PAPER));
    } catch (IOException e) {
      throw new UserMistake(
          path.resolve(PAPER) + " cannot be replaced (" + e.getMessage() + "); close it", e);
    }
  }

  private Occasion occasion(
      JudgedTake told, TakeSettings settings, Progress earlier, List<String> more) {
    List<String> beside = new ArrayList<>(List.of(MIDI, SOLO, PHRASES, JUDGEMENT));
    beside.addAll(more);
    return Occasion.of(settings.student(), settings.started().toLocalDate())
        .through(settings.input())
        .keptAs(name(), beside)
        .after(earlier)
        .planning(plan(told, settings))
        .inventing(invented());
  }

  /** What came of a session of inventing. */
  Optional<Invented> invented() {
    Path file = path.resolve(Invented.FILE);
    return Files.isRegularFile(file) ? Optional.of(Invented.read(file)) : Optional.empty();
  }

  /** What the student was told; where a teacher's word changed what that came from, a new plan. */
  private Optional<Plan> plan(JudgedTake told, TakeSettings settings) {
    Optional<Plan> said = text(path.resolve(NEXT)).flatMap(PlanJson::read);
    if (overrulings().isEmpty() || settings.way().isPresent()) {
      return said;
    }
    return said.map(plan -> plan.steps().get(0))
        .map(step -> Plan.after(told, step.chart(), step.key()));
  }

  /**
   * Adds to the report what takes a while: the PDF, the sound as a file, and the page once more
   * with the sound of each phrase. Each file comes whole or not at all; the PDF comes last, so that
   * a take without one is completed later.
   *
   * @param earlier the student's takes before this one
   * @throws UserMistake where the take is broken, or there is no room
   */
  public void complete(Progress earlier) {
    TakeSettings settings = settings();
    JudgedTake told = judged();
    if (Files.isRegularFile(recording())) {
      try (TakeSound sound = TakeSound.of(recording(), told)) {
        completeRecorded(told, settings, earlier, sound);
      }
    } else {
      completeRendered(told, settings, earlier);
    }
  }

  /** Whether it was played here and its report was never completed. */
  boolean isIncomplete() {
    return Files.isRegularFile(path.resolve(HEARD))
        && Files.isRegularFile(report())
        && !Files.exists(path.resolve(PAPER));
  }

  private void completeRecorded(
      JudgedTake told, TakeSettings settings, Progress earlier, TakeSound sound) {
    Optional<HeadphoneSound> mixed =
        sound
            .zeroSeconds()
            .flatMap(zero -> HeadphoneSound.of(sound.sound(), zero, told, settings.performance()));
    EarSound heard = mixed.isPresent() ? mixed.get() : sound.sound();
    try {
      mixed.ifPresent(
          mix -> WholeFile.write(path.resolve(SOUND), fresh -> EarWave.write(mix, fresh)));
      List<String> files =
          mixed.isPresent() ? List.of(PAPER, RECORDING, SOUND) : List.of(PAPER, RECORDING);
      Occasion occasion = occasion(told, settings, earlier, files).sungAt(sound.trace());
      String silent = ReportPage.of(told, occasion);
      String file = mixed.isPresent() ? SOUND : RECORDING;
      Listening listening =
          sound
              .zeroSeconds()
              .map(
                  zero ->
                      new PhraseSounds(heard, zero, silent.length())
                          .orElse(new SoundBeside(file, zero)))
              .orElse(Listening.NOTHING);
      WholeFile.write(report(), ReportPage.of(told, occasion.heardAs(listening)));
      WholeFile.write(path.resolve(PAPER), ReportPdf.of(told, occasion));
    } finally {
      mixed.ifPresent(HeadphoneSound::close);
    }
  }

  private void completeRendered(JudgedTake told, TakeSettings settings, Progress earlier) {
    try (RenderedSound sound = RenderedSound.of(told, settings.performance())) {
      sound
          .tape()
          .ifPresent(
              tape -> WholeFile.write(path.resolve(SOUND), fresh -> EarWave.write(tape, fresh)));
      List<String> files = sound.tape().isPresent() ? List.of(PAPER, SOUND) : List.of(PAPER);
      Occasion occasion = occasion(told, settings, earlier, files);
      int silent = ReportPage.of(told, occasion).length();
      WholeFile.write(report(), ReportPage.of(told, occasion.heardAs(sound.within(silent, SOUND))));
      WholeFile.write(path.resolve(PAPER), ReportPdf.of(told, occasion));
    }
  }

  /** Which verdicts the teacher overruled, in the order in which it was said. */
  public List<Overruling> overrulings() {
    Path file = path.resolve(OVERRULED);
    return text(file).map(json -> OverrulingJson.read(json, file.toString())).orElse(List.of());
  }

  /**
   * Keeps the teacher's word on a phrase beside what was said before, and tells the take anew: the
   * counts and the report follow the teacher.
   *
   * @param earlier the student's takes before this one
   */
  public void overrule(Overruling ruling, Progress earlier) {
    List<Overruling> all = new ArrayList<>(overrulings());
    all.add(ruling);
    JudgedTake judged = heardAgain();
    WholeFile.write(path.resolve(OVERRULED), OverrulingJson.of(all));
    tell(judged, settings(), earlier);
  }

  /** Judges the take again by its notes, under the teacher's word, and writes what comes of it. */
  public void tellAgain(Progress earlier) {
    tell(heardAgain(), settings(), earlier);
  }

  /**
   * The take with what the teacher overruled, judged by its notes as it would be now.
   *
   * @throws UserMistake where its files are missing or broken
   */
  public JudgedTake judged() {
    return heardAgain().overruledBy(overrulings());
  }

  /** Whether the same was heard in another take. */
  boolean holdsTheSame(TakeFolder other) throws IOException {
    for (String file : List.of(HEARD, MIDI)) {
      Path here = path.resolve(file);
      Path there = other.path.resolve(file);
      if (Files.isRegularFile(here) && Files.isRegularFile(there)) {
        return Files.mismatch(here, there) < 0;
      }
    }
    return false;
  }

  /** Whether there is something to be judged in it. */
  public boolean isPlayed() {
    return Files.isRegularFile(path.resolve(HEARD)) || Files.isRegularFile(path.resolve(MIDI));
  }

  private JudgedTake heardAgain() {
    Setting setting = settings().setting();
    Path heard = path.resolve(HEARD);
    if (Files.isRegularFile(heard)) {
      return Replay.judge(setting, LoggedTake.recover(heard));
    }
    RecordedTake recorded = MidiTakeFile.read(path.resolve(MIDI));
    LineChoice line =
        LineChoice.of(recorded, Optional.of(TakeMidi.PLAYER_TRACK), OptionalInt.empty());
    TakePlacement placement =
        new BarOne(setting.metre(), setting.beats().openingTempo())
            .of(recorded, line.line(), OptionalDouble.empty());
    List<PlayedNote> inTake =
        line.part().notes().stream()
            .map(note -> moved(note, placement.tempo(), setting.beats()))
            .toList();
    return Replay.judge(setting, inTake, List.of());
  }

  /** A file's seconds begin with its count-in, a take's with bar 1; the beats are the same. */
  private static PlayedNote moved(PlayedNote note, TempoMap file, TempoMap take) {
    double onset = take.secondsAt(file.beatAt(note.onsetSeconds()));
    double end = take.secondsAt(file.beatAt(note.endSeconds()));
    return new PlayedNote(
        onset, end - onset, note.pitch(), note.cents(), note.loudness(), note.confidence());
  }

  /** Whether the teacher's word came after what is told: a program was killed in between. */
  boolean isToldBeforeOverruled() {
    Path overruled = path.resolve(OVERRULED);
    try {
      return Files.isRegularFile(overruled)
          && Files.getLastModifiedTime(overruled).compareTo(Files.getLastModifiedTime(judgement()))
              > 0;
    } catch (IOException e) {
      return false;
    }
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
