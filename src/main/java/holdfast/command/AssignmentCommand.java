package holdfast.command;

import holdfast.backing.Feel;
import holdfast.book.Book;
import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.book.assignment.Answer;
import holdfast.book.assignment.Assignment;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.melody.IdeaNotation;
import holdfast.mistake.UserMistake;
import holdfast.practice.Way;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tasks to be sent to students and answers to be sent back, without a server. */
@Command(
    name = "assignment",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "A task in one small file, to be sent by e-mail or put into a shared folder, and its answer.",
      ""
    },
    subcommands = {AssignmentCommand.Pack.class},
    footer = {
      "",
      "The student plays it with: holdfast play FILE.carry --student NAME",
      "and sends the .carried file back; `holdfast class FOLDER` judges all that came back."
    })
final class AssignmentCommand implements Callable<Integer> {

  private static final int USUAL_CHORUSES = 3;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    throw new ParameterException(spec.commandLine(), "say what to do: pack, show, answer or keep");
  }

  /** Packs a task. */
  @Command(
      name = "pack",
      mixinStandardHelpOptions = true,
      sortOptions = false,
      description = "Packs chart, tempo, idea and what to do into one file.")
  static final class Pack implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "CHART", description = "one of our charts, or a file")
    private String chart = "";

    @Parameters(index = "1", paramLabel = "FILE.carry", description = "the file to write")
    private Path file;

    @Option(
        names = "--idea",
        paramLabel = "NOTES|FILE",
        description =
            "the idea to carry; without it the student brings one, or the coach does in head-start,"
                + " swap and guess-next")
    private Optional<String> idea = Optional.empty();

    @Option(
        names = "--way",
        paramLabel = "WAY",
        description =
            "the way of practising: head-start, swap, sing-back, climb, twelve-keys or guess-next;"
                + " without it the student plays alone")
    private Optional<String> way = Optional.empty();

    @Option(names = "--words", paramLabel = "TEXT", description = "what you say to it")
    private String words = "";

    @Option(
        names = "--tempo",
        paramLabel = "BPM",
        description = "beats a minute, 30 to 240 (the chart's own without it)")
    private Optional<Double> tempo = Optional.empty();

    @Option(
        names = "--key",
        paramLabel = "KEY",
        description = "move the chart to this key: Eb, F#m (the chart's own without it)")
    private Optional<String> key = Optional.empty();

    @Option(
        names = "--feel",
        paramLabel = "FEEL",
        description = "plain, ballad, swing, even or drone (the chart's own without it)")
    private Optional<String> feel = Optional.empty();

    @Option(
        names = "--choruses",
        paramLabel = "N",
        description = "how many times round, 1 to 99 (3 without it)")
    private int choruses = USUAL_CHORUSES;

    @Spec private CommandSpec spec;

    @Override
    public Integer call() {
      if (!file.toString().endsWith(Assignment.ENDING)) {
        throw new UserMistake(file + " must end in " + Assignment.ENDING + "; name it so");
      }
      Chart written = ChartLibrary.open(chart);
      Chart moved = key.map(wanted -> BackingOptions.moved(written, wanted)).orElse(written);
      Optional<Way> asked =
          way.map(
              word ->
                  Way.read(word)
                      .orElseThrow(
                          () ->
                              new UserMistake(
                                  "there is no way \""
                                      + word
                                      + "\"; choose one of "
                                      + Arrays.stream(Way.values())
                                          .map(Way::word)
                                          .collect(Collectors.joining(", ")))));
      Assignment task =
          new Assignment(
              UUID.randomUUID().toString(),
              moved,
              feel.map(Feel::parse).orElse(Feel.read(moved.feel()).orElse(Feel.PLAIN)),
              tempo.map(BackingOptions::checkedTempo).orElse(moved.tempo()),
              choruses,
              idea.map(text -> GivenIdea.read(text, moved.metre(), moved.tempo())),
              asked,
              words);
      task.write(file);
      spec.commandLine().getOut().println("The assignment is in " + file);
      spec.commandLine().getOut().flush();
      return 0;
    }
  }

  @Command(name = "show", mixinStandardHelpOptions = true, description = "Says what is asked.")
  int show(
      @Parameters(paramLabel = "FILE.carry", description = "the assignment to look into")
          Path file) {
    PrintWriter out = spec.commandLine().getOut();
    tell(Assignment.read(file), out);
    out.flush();
    return 0;
  }

  private static void tell(Assignment task, PrintWriter out) {
    tellTask(task, out);
    task.way().ifPresent(way -> out.println(way.title() + ": " + way.explanation()));
  }

  /** What is asked, for people; the way of practising is told where it begins. */
  static void tellTask(Assignment task, PrintWriter out) {
    out.println(
        String.format(
            Locale.ROOT,
            "%s at %.0f beats a minute, %s.",
            task.chart().title(),
            task.beatsPerMinute(),
            task.choruses() == 1 ? "once round" : task.choruses() + " times round"));
    out.println(
        task.idea()
            .map(notes -> "The idea: " + IdeaNotation.print(notes))
            .orElse(
                task.coachBringsIdea()
                    ? "I bring an idea; listen for it."
                    : "Bring an idea of your own."));
    if (!task.words().isEmpty()) {
      out.println(task.words());
    }
  }

  @Command(
      name = "answer",
      mixinStandardHelpOptions = true,
      description = "Packs a take of the book into one file to send back.")
  int answer(
      @Parameters(
              index = "0",
              paramLabel = "TAKE",
              description = "the take's name, as the book lists it")
          String take,
      @Parameters(
              index = "1",
              paramLabel = "FILE.carried",
              description = "the file to write, which goes to the teacher")
          Path file,
      @Option(names = "--with-sound", description = "send the recording along") boolean sound) {
    try (Book book = Book.open()) {
      Answer.pack(book.take(take), file, sound);
    }
    spec.commandLine().getOut().println("The answer is in " + file);
    spec.commandLine().getOut().flush();
    return 0;
  }

  @Command(
      name = "keep",
      mixinStandardHelpOptions = true,
      description = "Puts an answer that came back into the book.")
  int keep(
      @Parameters(paramLabel = "FILE.carried", description = "what a student sent back")
          Path file) {
    try (Book book = Book.open()) {
      int before = book.size();
      TakeFolder kept = book.keep(into -> Answer.unpack(file, into));
      TakeSettings settings = kept.settings();
      spec.commandLine()
          .getOut()
          .println(
              "The take of "
                  + settings.title()
                  + settings.student().map(name -> " by " + name).orElse("")
                  + (book.size() > before ? " is in " : " was in the book already: ")
                  + kept.path());
    }
    spec.commandLine().getOut().flush();
    return 0;
  }
}
