package holdfast.command;

import holdfast.book.assignment.Assignment;
import holdfast.book.overview.ClassPage;
import holdfast.book.overview.ClassWork;
import holdfast.book.overview.Share;
import holdfast.book.overview.Terms;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.command.live.LiveScreen;
import holdfast.listening.calibration.Profile;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A teacher's overview of what came back. */
@Command(
    name = "class",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Judge all takes that came back, and make one page of them: how each student carried the"
          + " idea, where it was let go, and who would be glad of a word.",
      "Answers to assignments (.carried) say themselves what was played over; for MIDI and sound"
          + " files name the chart. A file belongs to the student whose folder it is in, or whose"
          + " name it begins with: Mira_homework.mid.",
      ""
    },
    footer = {
      "",
      "A second run judges only what is new or has changed. A take that came twice counts once.",
      "Two students of one name: put the answers of one into a folder such as \"Mira B\".",
      "Several machines: give each --part 1/4, 2/4 … over the same folder, then --join once."
    })
final class ClassCommand implements Callable<Integer> {

  @Parameters(index = "0", paramLabel = "FOLDER", description = "the takes that came back")
  private Path folder;

  @Option(
      names = "--chart",
      paramLabel = "CHART",
      description = "what MIDI and sound files were played over")
  private Optional<String> chart = Optional.empty();

  @Option(
      names = "--assignment",
      paramLabel = "FILE.carry",
      description = "the assignment that MIDI and sound files answer, in place of --chart")
  private Optional<Path> assignment = Optional.empty();

  @Option(names = "--tempo", paramLabel = "BPM", description = "the tempo, where a file names none")
  private Optional<Double> tempo = Optional.empty();

  @Option(names = "--idea", paramLabel = "NOTES|FILE", description = "the idea that was given")
  private Optional<String> idea = Optional.empty();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "who sings or plays in sound files, as for `holdfast listen`")
  private Optional<String> profile = Optional.empty();

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      description = "where the overview goes; into FOLDER/overview without it")
  private Optional<Path> to = Optional.empty();

  @Option(names = "--part", paramLabel = "N/OF", description = "judge only this share, as 3/16")
  private Optional<String> part = Optional.empty();

  @Option(names = "--join", description = "judge nothing; make the page of what is judged")
  private boolean join;

  @Option(names = "--cores", paramLabel = "N", description = "takes at once; all cores without it")
  private int cores = Runtime.getRuntime().availableProcessors();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    if (!Files.isDirectory(folder)) {
      throw new UserMistake(folder + " is no folder; name the one with the takes");
    }
    if (cores < 1 || cores > 1024) {
      throw new UserMistake("--cores takes 1 to 1024, not " + cores);
    }
    PrintWriter out = spec.commandLine().getOut();
    Path overview = to.orElse(folder.resolve("overview"));
    Share share = part.map(Share::parse).orElse(Share.ALL);
    if (!join) {
      int looked = new ClassWork(folder, overview, terms(), share).run(cores, progress());
      out.println(looked + (looked == 1 ? " new file." : " new files."));
    }
    if (join && !Files.isDirectory(overview)) {
      throw new UserMistake(
          overview + " is not there; judge the parts first, or name it with --to");
    }
    if (share.equals(Share.ALL)) {
      ClassPage.Counts counts = ClassPage.write(overview);
      if (counts.troubles() > 0) {
        out.println(
            counts.troubles()
                + (counts.troubles() == 1 ? " file" : " files")
                + " could not be judged; the end of the page says why.");
      }
      out.println(
          "The overview of "
              + counts.takes()
              + (counts.takes() == 1 ? " take" : " takes")
              + " is in "
              + overview.resolve(ClassPage.PAGE));
    }
    out.flush();
    return 0;
  }

  /** A line that moves where somebody looks; nothing where a program listens. */
  private Consumer<ClassWork.Step> progress() {
    return LiveScreen.somebodyLooks() ? new ProgressLine(System.err)::show : step -> {};
  }

  private Terms terms() {
    if (assignment.isPresent() && chart.isPresent()) {
      throw new UserMistake("--assignment brings its own chart; leave out --chart");
    }
    if (assignment.isPresent()) {
      return with(Terms.of(Assignment.read(assignment.get())));
    }
    if (chart.isEmpty()) {
      return with(Terms.NONE);
    }
    return with(Terms.over(ChartLibrary.open(chart.get())));
  }

  private List<Note> given(String text, Terms terms) {
    Chart over =
        terms
            .chart()
            .orElseThrow(
                () -> new UserMistake("--idea was said over a chart; name it, too, with --chart"));
    return GivenIdea.read(text, over.metre(), over.tempo());
  }

  private Terms with(Terms terms) {
    return new Terms(
        terms.chart(),
        tempo.map(BackingOptions::checkedTempo).orElse(terms.beatsPerMinute()),
        idea.map(text -> given(text, terms)).or(terms::idea),
        terms.player(),
        profile.map(Profile::named).orElse(terms.profile()));
  }
}
