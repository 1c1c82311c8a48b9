package holdfast.command;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.RenderedSound;
import holdfast.book.UserFolder;
import holdfast.command.live.LiveScreen;
import holdfast.disk.WholeFile;
import holdfast.motif.Player;
import holdfast.report.JudgementText;
import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.session.Coach;
import holdfast.session.DemoPlayer;
import holdfast.session.DemoTake;
import holdfast.session.Feedback;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The main job on a take of our own, for a first look. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Hear and judge a short take that a demo student plays over one of our charts.",
      "Where there is a sound device she is heard, with the backing, and each phrase is judged as"
          + " it ends; that takes a minute."
    })
final class DemoCommand implements Callable<Integer> {

  @Option(names = "--quick", description = "Judge her take at once, without playing it.")
  private boolean quick;

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException, InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    DemoTake shipped = DemoTake.shipped();
    Performance performance =
        Performance.of(Arrangement.of(shipped.chart()).at(shipped.tempo()), DemoTake.CHORUSES);
    out.println(shipped.student() + ", our demo student, plays two choruses.");
    JudgedTake judged = judged(performance, out);
    new JudgementText(judged.setting()).close(judged).forEach(out::println);
    out.println();
    out.println("The report is in " + report(shipped.student(), judged, performance));
    out.println("To judge a take of yours: holdfast judge TAKE.mid --chart CHART");
    out.flush();
    return 0;
  }

  private JudgedTake judged(Performance performance, PrintWriter out) throws InterruptedException {
    if (quick) {
      return atOnce(performance, out);
    }
    try (SoundPlayer band = SoundPlayer.open(sound.choice())) {
      return aloudIfItCanBe(performance, band, out);
    }
  }

  static JudgedTake aloudIfItCanBe(Performance performance, SoundPlayer band, PrintWriter out)
      throws InterruptedException {
    if (!band.isHeard()) {
      out.println("There is no sound device here, so I judge her take at once.");
      return atOnce(performance, out);
    }
    out.println("This takes a minute; holdfast demo --quick judges her take at once.");
    out.println(SoundChoice.HEARING);
    band.trouble().ifPresent(out::println);
    out.flush();
    try (LiveScreen screen = LiveScreen.open(out)) {
      return aloud(performance, band, screen);
    }
  }

  /** She plays over the backing, in real time, and each phrase is judged as it ends. */
  static JudgedTake aloud(Performance performance, BackingPlayer band, LiveScreen screen)
      throws InterruptedException {
    DemoPlayer student = DemoPlayer.over(performance);
    TerminalAudience audience = new TerminalAudience(screen, Feedback.PHRASE, setting(performance));
    LiveTake take =
        new LiveTake(
            performance.arrangement().chart(),
            Player.KEYBOARD,
            Optional.empty(),
            audience,
            Keeper.NOBODY);
    return take.play(band, student.heardIn(performance), student);
  }

  /** The same take as a recording. */
  private static JudgedTake atOnce(Performance performance, PrintWriter out) {
    Setting setting = setting(performance);
    JudgementText text = new JudgementText(setting);
    return Coach.judge(setting, DemoPlayer.over(performance).played(), text.to(out::println));
  }

  private static Setting setting(Performance performance) {
    return Setting.of(
        performance.arrangement(), performance.tempoMap(), Player.KEYBOARD, Optional.empty());
  }

  private static Path report(String student, JudgedTake judged, Performance performance)
      throws IOException {
    Path folder = UserFolder.path().resolve("reports");
    Files.createDirectories(folder);
    Path report = folder.resolve("demo.html");
    Occasion occasion = Occasion.of(Optional.of(student), LocalDate.now(ZoneId.systemDefault()));
    try (RenderedSound sound = RenderedSound.of(judged, performance)) {
      WholeFile.write(report, ReportPage.of(judged, occasion.heardAs(sound)));
    }
    return report;
  }
}
