package holdfast.command;

import holdfast.disk.WholeFile;
import holdfast.listening.PlayedNote;
import holdfast.motif.Player;
import holdfast.report.JudgementText;
import holdfast.report.ReportPage;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The main job on a take of our own, for a first look. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = "Hear and judge a short take that a demo student plays over one of our charts.")
final class DemoCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    DemoTake demo = DemoTake.shipped();
    List<PlayedNote> played = demo.played();
    Setting setting =
        Setting.of(demo.chart(), TempoMap.steady(demo.tempo()), Player.KEYBOARD, Optional.empty());
    JudgementText text = new JudgementText(setting);
    out.println(demo.student() + ", our demo student, plays two choruses.");
    JudgedTake judged = Coach.judge(setting, played, text.to(out::println));
    text.close(judged).forEach(out::println);
    Path folder = UserFolder.path().resolve("reports");
    Files.createDirectories(folder);
    Path report = folder.resolve("demo.html");
    ReportPage.Heading heading =
        new ReportPage.Heading(
            Optional.of(demo.student()),
            Optional.of(LocalDate.now(ZoneId.systemDefault())),
            List.of());
    WholeFile.write(report, ReportPage.of(judged, heading));
    out.println();
    out.println("The report is in " + report);
    out.println("To judge a take of yours: holdfast judge TAKE.mid --chart CHART");
    out.flush();
    return 0;
  }
}
