package holdfast.command;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingBench;
import holdfast.backing.BusyCore;
import holdfast.backing.Feel;
import holdfast.backing.Lateness;
import holdfast.backing.OnsetErrors;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.book.UserFolder;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.listening.microphone.DriftWatch;
import holdfast.listening.microphone.ListeningCost;
import holdfast.mistake.UserMistake;
import holdfast.session.DemoTake;
import holdfast.session.Upkeep;
import holdfast.session.VerdictBench;
import holdfast.session.input.Inputs;
import holdfast.session.input.MicrophoneInput;
import holdfast.session.input.Surroundings;
import holdfast.window.FrameBench;
import holdfast.window.MainWindow;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Measures how well this machine keeps time with us, in real time and through the real devices. */
@Command(
    name = "bench",
    mixinStandardHelpOptions = true,
    description = "Plays a backing and measures its timing; in an audio loop also what is heard.")
final class BenchCommand implements Callable<Integer> {

  private static final double TEMPO = 68;

  /** Listening costs the same all the time. */
  private static final int MOST_LISTENED = 60;

  private static final int SHORTEST_SECONDS = 10;
  private static final int LONGEST_SECONDS = 3600;

  /** The demo lasts a minute. */
  private static final int LONGEST_FRAMES_SECONDS = 45;

  /** How often a soak is looked at. */
  private static final Duration LOOK_EVERY = Duration.ofMinutes(1);

  /** How a drift is taken: the first of so many parts of the looks against the last. */
  private static final int DRIFT_PARTS = 5;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      description = "About how long, 10 to 3600 (60 without it).")
  private int seconds = 60;

  @Option(names = "--busy", description = "Keep one core busy meanwhile.")
  private boolean busy;

  @Option(
      names = "--microphone",
      arity = "0..1",
      fallbackValue = "",
      paramLabel = "NAME",
      description = "Also measure what listening costs, on the microphone whose name holds this.")
  private Optional<String> microphone = Optional.empty();

  @Option(
      names = "--soak",
      description =
          "Hold one long live session of that many seconds instead, and tell every minute what it"
              + " holds on to: memory, threads, open files; in an audio loop also how far what is"
              + " heard drifts from what is played.")
  private boolean soak;

  @Option(
      names = "--frames",
      description = "Play the demo in the window instead, and measure its frames.")
  private boolean frames;

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException, IOException {
    if (frames) {
      return frames();
    }
    if (seconds < SHORTEST_SECONDS || seconds > LONGEST_SECONDS) {
      throw new UserMistake("--seconds takes 10 to 3600, not " + seconds);
    }
    if (soak) {
      soak();
      return 0;
    }
    Arrangement arrangement =
        Arrangement.of(
            ChartLibrary.open("lantern-turn"),
            Feel.BALLAD,
            TEMPO,
            Optional.empty(),
            Optional.empty());
    double roundSeconds = arrangement.form().lengthBeats() * 60 / TEMPO;
    int rounds = (int) Math.max(1, Math.round(seconds / roundSeconds));
    tell(
        BackingBench.run(
            new Performance(arrangement, OptionalInt.of(rounds), 1, Set.of()),
            sound.choice(),
            busy));
    tell(verdicts());
    if (microphone.isPresent()) {
      tell(listening(Inputs.microphone(microphone.get()), arrangement));
    }
    return 0;
  }

  private int frames() throws InterruptedException, IOException {
    if (!MainWindow.canOpen()) {
      throw new UserMistake("--frames needs a display; set DISPLAY, or start Xvfb");
    }
    FrameBench.run(Math.min(seconds, LONGEST_FRAMES_SECONDS), spec.commandLine().getOut());
    return 0;
  }

  /** Somebody might sing: what does it cost to listen while the backing is taken out? */
  private ListeningCost.Measured listening(MicrophoneInput input, Arrangement arrangement)
      throws InterruptedException {
    Performance endless = new Performance(arrangement, OptionalInt.empty(), 1, Set.of());
    try (SoundPlayer band = SoundPlayer.open(sound.choice())) {
      Playback playback = band.start(endless);
      Surroundings around =
          Surroundings.of(band, UserFolder.path().resolve(MicrophoneInput.CALIBRATIONS));
      ListeningCost.Measured measured =
          ListeningCost.measure(input.microphone(around), Math.min(seconds, MOST_LISTENED));
      playback.stop();
      return measured;
    }
  }

  private void tell(ListeningCost.Measured measured) {
    spec.commandLine()
        .getOut()
        .println(
            line(
                "CPU of listening       %.1f %% of one core over %.0f s; the device's thread"
                    + " allocated %d bytes",
                100 * measured.cpu(), measured.seconds(), measured.allocatedBytes()));
  }

  /** A student plays two choruses; how soon after each phrase is its verdict out? */
  private VerdictBench.Measured verdicts() throws InterruptedException {
    DemoTake demo = DemoTake.shipped();
    Arrangement arrangement = Arrangement.of(demo.chart()).at(demo.tempo());
    Performance performance = new Performance(arrangement, OptionalInt.of(2), 0, Set.of());
    Optional<BusyCore> burning = busy ? Optional.of(BusyCore.start()) : Optional.empty();
    try (SoundPlayer band = SoundPlayer.open(sound.choice())) {
      return VerdictBench.run(
          band,
          performance,
          demo.played(performance.tempoMap()),
          () -> burning.map(BusyCore::cpuNanos).orElse(0L));
    } finally {
      burning.ifPresent(BusyCore::close);
    }
  }

  /** The demo student plays her two choruses again and again. */
  private void soak() throws InterruptedException {
    DemoTake demo = DemoTake.shipped();
    Arrangement arrangement = Arrangement.of(demo.chart()).at(demo.tempo());
    double takeSeconds = 2 * arrangement.form().lengthBeats() * 60 / demo.tempo();
    int takes = (int) Math.max(1, Math.round(seconds / takeSeconds));
    Performance performance = new Performance(arrangement, OptionalInt.of(2 * takes), 0, Set.of());
    List<PlayedNote> once = demo.played(performance.tempoMap());
    List<PlayedNote> played =
        IntStream.range(0, takes)
            .boxed()
            .flatMap(i -> once.stream().map(note -> note.later(i * takeSeconds)))
            .toList();
    try (SoundPlayer band = SoundPlayer.open(sound.choice());
        Upkeep upkeep = Upkeep.watch(LOOK_EVERY)) {
      Optional<DriftWatch> drift =
          Inputs.microphones().stream().findFirst().flatMap(input -> drift(input, band));
      VerdictBench.Measured measured = VerdictBench.run(band, performance, played, () -> 0L);
      upkeep.look();
      drift.ifPresent(DriftWatch::close);
      tell(measured);
      PrintWriter out = spec.commandLine().getOut();
      out.println("sound ran dry          " + band.out().gaps() + " times");
      out.println("drift, captured        " + drift.flatMap(this::drift).orElse(NO_LOOP));
      out.println("minute   heap MB   threads   open files");
      for (Upkeep.Look look : upkeep.looks()) {
        out.println(
            line(
                "%6.1f %9.1f %9d %12d",
                look.seconds() / 60, look.heapBytes() / 1e6, look.threads(), look.openFiles()));
      }
    }
  }

  private Optional<DriftWatch> drift(MicrophoneInput input, SoundPlayer band) {
    Surroundings around =
        Surroundings.of(band, UserFolder.path().resolve(MicrophoneInput.CALIBRATIONS));
    return DriftWatch.start(input.microphone(around), LOOK_EVERY.toNanos());
  }

  /** By its medians: what is heard while a buffer that ran dry fills again is no drift. */
  private Optional<String> drift(DriftWatch watch) {
    List<DriftWatch.Look> looks = watch.looks();
    if (looks.isEmpty()) {
      return Optional.empty();
    }
    int part = Math.max(1, looks.size() / DRIFT_PARTS);
    double first = medianMillis(looks.subList(0, part));
    double last = medianMillis(looks.subList(looks.size() - part, looks.size()));
    return Optional.of(
        line("%.2f ms from the first minutes to the last (medians of %d looks)", last - first, part)
            + looks.stream()
                .map(
                    look ->
                        line("%n%8.1f min %8.2f ms late", look.seconds() / 60, look.lateMillis()))
                .collect(Collectors.joining()));
  }

  private static double medianMillis(List<DriftWatch.Look> looks) {
    double[] sorted = looks.stream().mapToDouble(DriftWatch.Look::lateMillis).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  private void tell(VerdictBench.Measured measured) {
    spec.commandLine()
        .getOut()
        .println(
            line(
                "phrase end to verdict  p50 %.1f ms, p99 %.1f ms, max %.1f ms over %d phrases",
                measured.within(0.5),
                measured.within(0.99),
                measured.within(1),
                measured.millis().size()));
    spec.commandLine()
        .getOut()
        .println(line("CPU of a live session  %.1f %% of one core", 100 * measured.steadyCpu()));
  }

  private void tell(BackingBench.Measured measured) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("output                 " + measured.output());
    measured.trouble().ifPresent(out::println);
    out.println(
        line("played                 %.1f s%s", measured.seconds(), busy ? ", one core busy" : ""));
    Lateness late = measured.lateness();
    out.println(
        line(
            "messages sent late by  p50 %.2f ms, p99 %.2f ms, max %.2f ms (sent 150 ms ahead)",
            late.medianNanos() / 1e6, late.p99Nanos() / 1e6, late.maxNanos() / 1e6));
    out.println("sound ran dry          " + measured.gaps() + " times");
    out.println("onset error, captured  " + measured.onsets().map(this::errors).orElse(NO_LOOP));
    out.println(
        line(
            "garbage collection     %d pauses, %d ms together",
            measured.collections(), measured.collectionMillis()));
    out.println(line("steady CPU             %.1f %% of one core", 100 * measured.steadyCpu()));
  }

  private static final String NO_LOOP = "not measured: the recording device hears nothing of it";

  private String errors(OnsetErrors errors) {
    if (errors.worstLikeness() < ALIKE) {
      return "not measured: the recording device hears something else";
    }
    return line(
        "p50 %.3f ms, max %.3f ms over %d onsets",
        errors.medianMillis(), errors.maxMillis(), errors.millis().size());
  }

  /** A loop gives nearly 1; a microphone in a room less than this. */
  private static final double ALIKE = 0.8;

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
