package holdfast.command;

import holdfast.backing.BackingAudio;
import holdfast.backing.BackingMidi;
import holdfast.backing.BeatNotice;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plays a chart's backing, or writes it to a file for practice elsewhere. */
@Command(
    name = "backing",
    mixinStandardHelpOptions = true,
    description = "Plays the changes of a chart, or writes them to a sound or MIDI file.")
final class BackingCommand implements Callable<Integer> {

  /** A file has an end: three times round is enough to practise with. */
  private static final int CHORUSES_OF_A_FILE = 3;

  @Parameters(paramLabel = "CHART", description = "The name of a chart, or its file.")
  private String chartName = "";

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Write a .wav or a .mid file instead of playing.")
  private Optional<Path> to = Optional.empty();

  @Mixin private BackingOptions options = new BackingOptions();

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    Chart chart = ChartLibrary.open(chartName);
    if (to.isPresent()) {
      write(options.performance(chart, OptionalInt.of(CHORUSES_OF_A_FILE)), to.get());
    } else {
      play(options.performance(chart, OptionalInt.empty()));
    }
    return 0;
  }

  private void write(Performance performance, Path file) {
    if (performance.rounds().isEmpty()) {
      throw new UserMistake("a file has an end: give --choruses a number");
    }
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".wav")) {
      BackingAudio.write(performance, sound.bank(), file);
    } else if (name.endsWith(".mid") || name.endsWith(".midi")) {
      BackingMidi.write(performance, file);
    } else {
      throw new UserMistake(file + " must end in .wav or .mid, so that we know what to write");
    }
    int rounds = performance.rounds().getAsInt();
    spec.commandLine()
        .getOut()
        .println(
            "Wrote "
                + file
                + ": "
                + performance.arrangement().chart().title()
                + (rounds == 1 ? ", once" : ", " + rounds + " times")
                + " round, "
                + clock(performance.seconds())
                + ".");
  }

  private static String clock(double seconds) {
    long whole = Math.round(seconds);
    return String.format(Locale.ROOT, "%d:%02d minutes", whole / 60, whole % 60);
  }

  private void play(Performance performance) throws InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    PlayedAloud.play(performance, sound.choice(), out, notice -> tell(out, performance, notice));
  }

  private static void tell(PrintWriter out, Performance performance, BeatNotice notice) {
    if (notice.beat() < 0 || notice.beatOfBar() != 1) {
      return;
    }
    String chords =
        performance.arrangement().chordsOf(notice.place()).stream()
            .map(span -> span.harmony().display())
            .collect(Collectors.joining(" "));
    out.println(
        "chorus " + notice.place().chorus() + ", bar " + notice.place().bar() + ": " + chords);
    out.flush();
  }
}
