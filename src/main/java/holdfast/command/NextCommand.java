package holdfast.command;

import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.book.Book;
import holdfast.carry.CarriedThrough;
import holdfast.carry.Habit;
import holdfast.carry.PitchRange;
import holdfast.carry.Statement;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.WrittenIdea;
import holdfast.report.CarriedJson;
import holdfast.report.CarriedSheet;
import holdfast.report.CarriedText;
import holdfast.theory.SpelledPitch;
import holdfast.time.Metre;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Answers "and over this chord?" for every chord of a chart, with the student's own idea. */
@Command(
    name = "next",
    mixinStandardHelpOptions = true,
    description = {
      "Carries your idea through a chart: for each chord one or two ways to say it, and why.",
      "Over a chord that goes on it comes again after two bars, so that there is room to breathe."
    },
    footerHeading = "%nAn idea:%n",
    footer = {
      "  G4/0.5 A4/0.5 C5 A4 E4/1.5    a letter, # or b, an octave; C4 is middle C",
      "  G4/0.5 | C5 A4/0.5 -/0.5 F4   /0.5 is a length in beats, 1 without it;",
      "                                - is a rest; before a bar line | is a pick-up",
      "",
      "With --json:",
      "  {\"chart\": …, \"key\": …, \"metre\": \"4/4\", \"tempo\": 60,",
      "   \"idea\": {\"chord\": \"Dm7\", \"notes\": [NOTE, …]},",
      "   \"sayings\": [{\"bar\": 1, \"startBeat\": 0, \"chords\": [\"Dm7\"],",
      "     \"heldShorter\": false, \"taken\": 1, \"choices\": [",
      "       {\"way\": \"literal\", \"notes\": [NOTE, …], \"reasons\": [\"…\"]}, …]}, …]}",
      "  NOTE: {\"onset\": 0, \"duration\": 0.5, \"pitch\": 67, \"name\": \"G4\"}",
      "  (Beats count from bar 1, in the idea from its own bar line, where notes have",
      "  no name. taken says which choice the line goes on from. heldShorter: its last",
      "  note makes room for the next. way: literal, skewed to the chord, sequence or",
      "  transposed.)"
    })
final class NextCommand implements Callable<Integer> {

  @Parameters(paramLabel = "CHART", description = "The name of a chart, or its file.")
  private String chartName = "";

  @ArgGroup(multiplicity = "1")
  private Idea idea = new Idea();

  /** Where the idea comes from. */
  static final class Idea {
    @Option(
        names = "--idea",
        paramLabel = "IDEA",
        description = "The idea as notes, or a MIDI file that holds it.")
    private Optional<String> given = Optional.empty();

    @Option(
        names = "--last",
        description = {
          "The idea of the last take that was played.",
          "What its player would do next comes first."
        })
    private boolean last;
  }

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "Move the chart to this key: Eb, F#m (the chart's own without it).")
  private Optional<String> key = Optional.empty();

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "Beats a minute, 30 to 240 (the chart's own without it).")
  private Optional<Double> tempo = Optional.empty();

  @Option(
      names = "--range",
      paramLabel = "LOW..HIGH",
      description = "Stay in this range of a voice or an instrument: D4..C5.")
  private Optional<String> range = Optional.empty();

  @Option(
      names = "--choice",
      paramLabel = "1|2",
      description = "Which choice the line goes on from, where there are two (1 without it).")
  private int choice = 1;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = {
        "Write the line: a .musicxml file with its chords,",
        "or a .mid or .wav file with the backing under it."
      })
  private Optional<Path> to = Optional.empty();

  @Option(names = "--play", description = "Play the line over the backing.")
  private boolean play;

  @Mixin private SoundOptions sound = new SoundOptions();

  @Option(names = "--json", description = "Answer in JSON, for other programs.")
  private boolean json;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    if (choice != 1 && choice != 2) {
      throw new UserMistake("--choice takes 1 or 2, not " + choice);
    }
    Chart written = ChartLibrary.open(chartName).sounding();
    Chart chart = key.map(wanted -> BackingOptions.moved(written, wanted)).orElse(written);
    double beatsPerMinute = tempo.map(BackingOptions::checkedTempo).orElse(chart.tempo());
    CarriedThrough carried = carried(chart, beatsPerMinute);
    Performance performance = performance(chart, beatsPerMinute).withLine(carried.line());
    to.ifPresent(
        file ->
            LineFile.write(
                file, performance, CarriedSheet.of(carried, chart, beatsPerMinute), sound::bank));
    PrintWriter out = spec.commandLine().getOut();
    say(out, carried, chart, beatsPerMinute);
    out.flush();
    if (play) {
      PlayedAloud.play(performance, sound.choice(), out, beat -> {});
    }
    return 0;
  }

  private void say(PrintWriter out, CarriedThrough carried, Chart chart, double beatsPerMinute) {
    if (json) {
      out.println(CarriedJson.of(carried, chart, beatsPerMinute));
    } else if (to.isPresent()) {
      out.println("Wrote " + to.get() + ": your idea through " + chart.title() + ".");
    } else {
      out.println(chart.title() + chart.key().map(k -> ", " + k.display()).orElse(""));
      out.println();
      CarriedText.of(carried, chart.key()).forEach(out::println);
    }
  }

  /** The backing once round; the chords keep out of the way of a voice whose range is told. */
  private Performance performance(Chart chart, double beatsPerMinute) {
    Arrangement arrangement =
        Arrangement.of(
            chart,
            Feel.read(chart.feel()).orElse(Feel.PLAIN),
            beatsPerMinute,
            Optional.empty(),
            range
                .map(NextCommand::pitchRange)
                .map(r -> new holdfast.backing.PitchRange(r.low(), r.high())));
    return Performance.of(arrangement, 1);
  }

  private CarriedThrough carried(Chart chart, double beatsPerMinute) {
    PitchRange within = range.map(NextCommand::pitchRange).orElse(PitchRange.ANY);
    try {
      return CarriedThrough.of(
          statement(chart.metre(), beatsPerMinute),
          chart.form(),
          chart.changes(),
          within,
          habit(chart),
          choice);
    } catch (IllegalArgumentException e) {
      throw new UserMistake("“" + chart.title() + "”: " + e.getMessage(), e);
    }
  }

  private static Statement lastPlayed() {
    try (Book book = Book.open()) {
      return book.lastIdea();
    }
  }

  /** How the player of the last take carries ideas: what they would do next comes first. */
  private Habit habit(Chart chart) {
    if (!idea.last) {
      return Habit.UNKNOWN;
    }
    try (Book book = Book.open()) {
      return Habit.of(book.lastStatements(), chart.key());
    }
  }

  private Statement statement(Metre metre, double beatsPerMinute) {
    if (idea.last) {
      Statement played = lastPlayed();
      return new Statement(WrittenIdea.ofPlayed(played.notes(), metre), played.harmony());
    }
    List<Note> given = GivenIdea.read(idea.given.orElseThrow(), metre, beatsPerMinute);
    return new Statement(WrittenIdea.ofGiven(given, metre), Optional.empty());
  }

  private static PitchRange pitchRange(String text) {
    String[] ends = text.split("\\.\\.", -1);
    if (ends.length != 2) {
      throw new UserMistake("--range takes two pitches as C4..A5, not \"" + text + "\"");
    }
    int low;
    int high;
    try {
      low = SpelledPitch.parse(ends[0].strip()).midi();
      high = SpelledPitch.parse(ends[1].strip()).midi();
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--range: " + e.getMessage(), e);
    }
    if (high - low < PitchRange.LEAST_SEMITONES) {
      throw new UserMistake(
          "--range needs an octave or more, the lower pitch first, as C4..C5, not \""
              + text
              + "\"");
    }
    return new PitchRange(low, high);
  }
}
