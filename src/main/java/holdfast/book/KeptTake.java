package holdfast.book;

import holdfast.backing.Performance;
import holdfast.chart.ChartText;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.melody.IdeaNotation;
import holdfast.motif.Motif;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.Setting;
import holdfast.session.log.TakeLog;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A running take on the disk: a log while it runs, and when it is over a folder with its MIDI file
 * and its report. A take that was broken off is finished at the next start.
 */
public final class KeptTake implements Keeper, AutoCloseable {

  private final TakeLog log;
  private final Path folder;
  private final Performance performance;

  private KeptTake(TakeLog log, Path folder, Performance performance) {
    this.log = log;
    this.folder = folder;
    this.performance = performance;
  }

  /** Where takes are kept. */
  public static Path takes() {
    return UserFolder.path().resolve("takes");
  }

  /** Starts to write a take down. */
  public static KeptTake begin(
      Setting setting, Performance performance, NoteSource source, Optional<String> student)
      throws IOException {
    Files.createDirectories(takes());
    String name = name(setting.chart().title());
    Map<String, String> settings = new LinkedHashMap<>();
    settings.put(TakeFolder.CHART, ChartText.print(setting.chart()));
    settings.put(TakeFolder.FEEL, performance.arrangement().feel().word());
    settings.put(
        TakeFolder.BARS,
        performance.arrangement().bars().first() + ".." + performance.arrangement().bars().last());
    settings.put(TakeFolder.PLAYER, setting.player().name());
    settings.put(TakeFolder.INPUT, source.name());
    student.ifPresent(who -> settings.put(TakeFolder.STUDENT, who));
    setting
        .givenIdea()
        .map(Motif::notes)
        .ifPresent(idea -> settings.put(TakeFolder.IDEA, IdeaNotation.print(idea)));
    TakeLog log = TakeLog.start(takes().resolve(name + TakeFolder.LOG_ENDING), settings);
    log.tempo(setting.beats());
    return new KeptTake(log, takes().resolve(name), performance);
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

  /** The take is over: writes its folder, and says where it is. */
  public List<String> finish(JudgedTake judged, Optional<String> student) throws IOException {
    log.end(judged.setting().beats().secondsAt(judged.phrases().isEmpty() ? 0 : lastBeat(judged)));
    log.close();
    List<String> said = new ArrayList<>();
    log.trouble().ifPresent(said::add);
    TakeFolder.write(folder, judged, performance, student);
    Files.deleteIfExists(log.file());
    said.add("The take and its report are in " + folder);
    return said;
  }

  @Override
  public void close() {
    log.close();
  }

  private static double lastBeat(JudgedTake judged) {
    return judged.phrases().get(judged.phrases().size() - 1).endBeat();
  }

  /** A folder name that sorts by time and says which chart it was. */
  private static String name(String title) {
    String when =
        DateTimeFormatter.ofPattern("yyyy-MM-dd_HH-mm-ss", Locale.ROOT)
            .format(LocalDateTime.now(ZoneId.systemDefault()));
    String plain =
        title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    String cut = plain.substring(0, Math.min(40, plain.length()));
    return cut.isEmpty() ? when : when + "_" + cut;
  }
}
