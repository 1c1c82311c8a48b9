package holdfast.book;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Part;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import holdfast.chart.ChordSpan;
import holdfast.disk.WholeFile;
import holdfast.listening.PlayedNote;
import holdfast.listening.midi.MidiTakeWriter;
import holdfast.listening.midi.TakeScore;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.report.JudgementJson;
import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.session.log.BrokenOffTakes;
import holdfast.session.log.LoggedTake;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a finished take leaves: a MIDI file, the judgement as JSON, and the report. */
public final class TakeFolder {

  public static final String LOG_ENDING = ".log";
  public static final String CHART = "chart";
  public static final String FEEL = "feel";
  public static final String BARS = "bars";
  public static final String PLAYER = "player";
  public static final String INPUT = "input";
  public static final String STUDENT = "student";
  public static final String IDEA = "idea";

  private static final Logger LOG = LoggerFactory.getLogger(TakeFolder.class);

  /** General MIDI: the player's line on a piano, channel 1; see {@link #channel}. */
  private static final int PLAYER_CHANNEL = 1;

  private static final int CHORDS_CHANNEL = 2;
  private static final int BASS_CHANNEL = 3;
  private static final int LINE_CHANNEL = 4;
  private static final int PERCUSSION_CHANNEL = 10;

  private TakeFolder() {}

  /** Writes the folder of a take. */
  public static void write(
      Path folder, JudgedTake judged, Performance performance, Optional<String> student)
      throws IOException {
    Files.createDirectories(folder);
    MidiTakeWriter.write(score(judged, performance).take(), folder.resolve("take.mid"));
    WholeFile.write(folder.resolve("judgement.json"), JudgementJson.of(judged) + "\n");
    Occasion occasion = Occasion.of(student, LocalDate.now(ZoneId.systemDefault()));
    WholeFile.write(folder.resolve("report.html"), ReportPage.of(judged, occasion));
  }

  /** Finishes every take that was broken off, and says so, a sentence each. */
  public static List<String> finishBrokenOff(Path takes) {
    List<String> said = new ArrayList<>();
    for (Path log : BrokenOffTakes.in(takes, LOG_ENDING)) {
      try {
        String name = log.getFileName().toString();
        Path folder = takes.resolve(name.substring(0, name.length() - LOG_ENDING.length()));
        finish(log, folder);
        said.add("A take that was broken off is finished now; it is in " + folder);
      } catch (IOException | UserMistake e) {
        LOG.warn("the broken-off take {} waits: {}", log, e.getMessage());
      }
    }
    return said;
  }

  private static void finish(Path log, Path folder) throws IOException {
    LoggedTake logged = LoggedTake.recover(log);
    Map<String, String> settings = logged.settings();
    Chart chart = ChartText.parse(settings.getOrDefault(CHART, ""), log.toString());
    TempoMap tempo = logged.tempo().orElse(TempoMap.steady(chart.tempo()));
    Arrangement arrangement =
        Arrangement.of(
            chart,
            Feel.read(settings.getOrDefault(FEEL, "")).orElse(Feel.PLAIN),
            tempo.openingTempo(),
            Optional.ofNullable(settings.get(BARS)).map(BarRange::parse),
            Optional.empty());
    Optional<Motif> given =
        Optional.ofNullable(settings.get(IDEA))
            .map(IdeaNotation::parse)
            .map(notes -> Motif.over(arrangement.changes().at(0).harmony(), notes));
    Player player = Player.valueOf(settings.getOrDefault(PLAYER, Player.UNKNOWN.name()));
    Setting setting = Setting.of(arrangement, tempo, player, given);
    JudgedTake judged = Coach.judge(setting, logged.notes(), phrase -> {});
    Performance performance = new Performance(arrangement, OptionalInt.empty(), 0, Set.of());
    write(folder, judged, performance, Optional.ofNullable(settings.get(STUDENT)));
    Files.deleteIfExists(log);
  }

  private static TakeScore score(JudgedTake judged, Performance performance) {
    Setting setting = judged.setting();
    List<PlayedNote> line = judged.phrases().stream().flatMap(p -> p.played().stream()).toList();
    double end =
        line.isEmpty() ? 0 : setting.beats().beatAt(line.get(line.size() - 1).endSeconds());
    Performance whole = ending(performance, end);
    List<TakeScore.Voice> voices = new ArrayList<>();
    voices.add(new TakeScore.Voice("Player", PLAYER_CHANNEL, OptionalInt.of(0), line, List.of()));
    for (Part part : Part.values()) {
      List<TakeScore.Stroke> strokes =
          whole.events().stream()
              .filter(e -> e.part() == part)
              .map(
                  e ->
                      new TakeScore.Stroke(
                          new Note(e.onsetBeats(), e.durationBeats(), e.pitch()), e.velocity()))
              .toList();
      voices.add(
          TakeScore.Voice.inBeats(
              name(part), channel(part), OptionalInt.empty(), strokes, setting.beats()));
    }
    return new TakeScore(
        setting.chart().title(),
        setting.metre(),
        setting.changes().key(),
        setting.beats(),
        marks(setting, whole),
        voices);
  }

  /** A performance without end ends with the round in which the last note was played. */
  private static Performance ending(Performance performance, double lastBeat) {
    if (performance.rounds().isPresent()) {
      return performance;
    }
    double round =
        (double) performance.arrangement().bars().size()
            * performance.arrangement().metre().beats();
    int rounds = Math.max(1, (int) Math.ceil(lastBeat / round));
    return new Performance(
        performance.arrangement(),
        OptionalInt.of(rounds),
        performance.countInBars(),
        performance.muted(),
        performance.line());
  }

  private static List<TakeScore.BeatMark> marks(Setting setting, Performance whole) {
    double end = whole.lastBeat().orElse(0.0);
    List<TakeScore.BeatMark> marks = new ArrayList<>();
    if (end > 0) {
      for (ChordSpan span : setting.changes().between(0, end)) {
        marks.add(new TakeScore.BeatMark(Math.max(0, span.startBeat()), span.harmony().text()));
      }
    }
    return marks;
  }

  private static String name(Part part) {
    return switch (part) {
      case CHORDS -> "Chords";
      case BASS -> "Bass";
      case TIME -> "Time";
      case LINE -> "Line";
    };
  }

  private static int channel(Part part) {
    return switch (part) {
      case CHORDS -> CHORDS_CHANNEL;
      case BASS -> BASS_CHANNEL;
      case TIME -> PERCUSSION_CHANNEL;
      case LINE -> LINE_CHANNEL;
    };
  }
}
