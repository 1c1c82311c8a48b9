package holdfast.command;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.PitchRange;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.Exercise;
import holdfast.practice.Lesson;
import holdfast.practice.Way;
import holdfast.practice.WrittenIdea;
import holdfast.session.Feedback;
import holdfast.session.input.InputChoice;
import holdfast.theory.Harmony;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Practises with the coach, in one of several ways. */
@Command(
    name = "practise",
    aliases = "practice",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {"Practise with me, in one of six ways. Without a way they are listed.", ""},
    footer = {
      "",
      "For instance:",
      "  holdfast practise swap lantern-turn",
      "  holdfast practise climb lantern-turn --bars 5..8 --tempo 48",
      "  holdfast practise twelve-keys Dm7 --microphone --profile voice",
      "While it plays: space stops, i takes a new idea, h hides what I say."
    })
final class PractiseCommand implements Callable<Integer> {

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "WAY",
      description = "head-start, swap, sing-back, climb, twelve-keys or guess-next")
  private Optional<String> way = Optional.empty();

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "CHART",
      description = "one of our charts, or a file; for twelve-keys a chord such as Dm7, too")
  private Optional<String> chart = Optional.empty();

  @ArgGroup private Idea idea = new Idea();

  /** Where the idea comes from. */
  static final class Idea {
    @Option(
        names = "--idea",
        paramLabel = "NOTES|FILE",
        description = "The idea to practise; without it you say it, or I bring one where I begin.")
    private Optional<String> given = Optional.empty();

    @Option(names = "--last", description = "The idea of the last take that was played.")
    private boolean last;

    @Option(
        names = "--invented",
        paramLabel = "N",
        description = "Idea number N of the last time you (or --student) invented some.")
    private Optional<Integer> invented = Optional.empty();
  }

  @Option(
      names = "--begin",
      paramLabel = "CHORDS",
      description = "In a head start: over how many chords I say the idea, 1 or 2 (1 without it).")
  private int begin = 1;

  @Option(
      names = "--tell",
      paramLabel = "WHEN",
      description = "When I say more of a phrase: phrase, chorus or end (the default).")
  private Feedback tell = Feedback.END;

  @Option(
      names = "--student",
      paramLabel = "NAME",
      description = "A first name or nickname for the report.")
  private Optional<String> student = Optional.empty();

  @Mixin private InputOptions input = new InputOptions();

  @Mixin private BackingOptions backing = new BackingOptions();

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException, IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (way.isEmpty()) {
      for (Way each : Way.values()) {
        out.println(each.word());
        out.println("    " + each.explanation());
      }
      return 0;
    }
    Way wanted = way(way.get());
    if (chart.isEmpty()) {
      chart = input.chartBehindMicrophone();
    }
    Exercise exercise = exercise(wanted, opened(wanted));
    Performance asked = backing.performance(exercise.chart(), OptionalInt.of(1));
    Lesson lesson =
        Lesson.of(exercise, Instant.now().getEpochSecond())
            .playedWith(asked.countInBars(), asked.muted());
    InputChoice choice = input.choice();
    try (Book book = Book.open()) {
      book.said().forEach(out::println);
    }
    int buffer =
        input.soundsMe() ? SoundChoice.QUICK_BUFFER_MILLIS : SoundChoice.SAFE_BUFFER_MILLIS;
    KeptTake kept =
        new LessonTaken(lesson, chartName(), backing.key(), student, Optional.empty())
            .play(sound.choice(buffer), band -> choice.in(input.around(band)), tell, out);
    Completing.of(kept, out);
    return 0;
  }

  private static Way way(String word) {
    return Way.read(word)
        .orElseThrow(
            () -> new UserMistake("there is no way \"" + word + "\"; choose one of " + words()));
  }

  private static String words() {
    return Arrays.stream(Way.values()).map(Way::word).collect(Collectors.joining(", "));
  }

  private String chartName() {
    return chart.orElseThrow(
        () -> new UserMistake("name a chart, such as lantern-turn; `holdfast charts` lists them"));
  }

  private Chart opened(Way wanted) {
    String name = chartName();
    boolean mayBeAChord = wanted == Way.TWELVE_KEYS && ChartLibrary.shipped(name).isEmpty();
    if (mayBeAChord && isChord(name)) {
      return ChartText.parse("title: " + name + "\n\n| " + name + " |\n", name);
    }
    return ChartLibrary.open(name);
  }

  private static boolean isChord(String text) {
    try {
      return Harmony.parse(text).hasChord();
    } catch (IllegalArgumentException noChord) {
      return false;
    }
  }

  /** What is asked for, checked. */
  private Exercise exercise(Way wanted, Chart written) {
    if (begin < 1 || begin > Exercise.MOST_COACH_CHORDS) {
      throw new UserMistake("--begin takes 1 or 2 chords, not " + begin);
    }
    Arrangement arrangement =
        backing.performance(written, OptionalInt.of(1), input.singersRange()).arrangement();
    Chart moved = arrangement.chart();
    double tempo =
        backing.hasTempo()
            ? arrangement.tempo()
            : Exercise.startingTempo(wanted, arrangement.tempo());
    Optional<PitchRange> range = backing.range().or(input::singersRange);
    return new Exercise(
        wanted,
        moved,
        arrangement.feel(),
        tempo,
        backing.bars(),
        range.map(PractiseCommand::withRoom).orElse(holdfast.carry.PitchRange.ANY),
        idea(moved),
        begin,
        backing.rounds());
  }

  private static holdfast.carry.PitchRange withRoom(PitchRange range) {
    if (range.highest() - range.lowest() < holdfast.carry.PitchRange.LEAST_SEMITONES) {
      throw new UserMistake("--range needs an octave or more, as C4..C5");
    }
    return new holdfast.carry.PitchRange(range.lowest(), range.highest());
  }

  private Optional<List<Note>> idea(Chart over) {
    if (idea.last) {
      try (Book book = Book.open()) {
        return Optional.of(WrittenIdea.ofPlayed(book.lastIdea().notes(), over.metre()));
      }
    }
    if (idea.invented.isPresent()) {
      return Optional.of(InventedFiles.idea(KeptTake.takes(), student, idea.invented.get()));
    }
    return idea.given
        .map(text -> GivenIdea.read(text, over.metre(), over.tempo()))
        .map(notes -> WrittenIdea.ofGiven(notes, over.metre()));
  }
}
