package holdfast.command;

import holdfast.backing.sound.OutputLatencies;
import holdfast.backing.sound.OutputLine;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.UserFolder;
import holdfast.command.live.LiveScreen;
import holdfast.listening.Capture;
import holdfast.listening.PlayEvent;
import holdfast.listening.audio.Resampler;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Loop;
import holdfast.listening.calibration.LoopDelay;
import holdfast.listening.calibration.Profile;
import holdfast.listening.calibration.SungSample;
import holdfast.listening.calibration.TapAlong;
import holdfast.listening.calibration.TapCheck;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.microphone.LineSamples;
import holdfast.listening.microphone.Microphone;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.session.input.Inputs;
import holdfast.time.TakeClock;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.LongConsumer;
import javax.sound.sampled.SourceDataLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Measures microphone, loudspeaker, room and singer, and keeps what it found. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Measures delay, noise, level, tuning and range, and keeps them for this pair of devices.",
      "First be quiet for two seconds; a chirp sounds four times from the loudspeaker; then sing"
          + " low and high.",
      ""
    },
    footer = {
      "",
      "With headphones on, the microphone hears no chirp: use --tap, and tap along to clicks."
    })
final class CalibrateCommand implements Callable<Integer> {

  private static final double QUIET_SECONDS = 2;

  /** Tapping keys and pads hear no sound back: the input's share is then taken to be this. */
  private static final double UNMEASURED_INPUT_SECONDS = 0.010;

  @Option(
      names = "--microphone",
      paramLabel = "NAME",
      description = "part of the microphone's name; else the system's own")
  private String microphone = "";

  @Option(
      names = "--output",
      paramLabel = "NAME",
      description = "part of the loudspeaker's name; else the system's own")
  private Optional<String> output = Optional.empty();

  @Option(
      names = "--sing-seconds",
      paramLabel = "N",
      description = "how long to listen to the singing (10 without it; 0: not at all)",
      defaultValue = "10")
  private int singSeconds;

  @Option(
      names = "--tap",
      paramLabel = "WITH",
      arity = "0..1",
      fallbackValue = "key",
      description =
          "measure the delay by tapping along to clicks: with a key of this terminal (key, the"
              + " default), with a MIDI keyboard (midi), or by clapping into the microphone with"
              + " headphones on (clap)")
  private Optional<String> tap = Optional.empty();

  @Option(names = "--devices", description = "only name the microphones and loudspeakers")
  private boolean devices;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException, InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    if (devices) {
      out.println("microphones:");
      Microphone.names().forEach(name -> out.println("  " + name));
      out.println("loudspeakers:");
      OutputLine.names().forEach(name -> out.println("  " + name));
      return 0;
    }
    if (singSeconds < 0 || singSeconds > 120) {
      throw new UserMistake("--sing-seconds must be 0 to 120, not " + singSeconds);
    }
    Optional<String> with = tap.map(CalibrateCommand::tapWay);
    String input = Inputs.microphone(microphone).name();
    OutputLine.Open opened =
        OutputLine.open(output, SoundChoice.SAFE_BUFFER_MILLIS)
            .orElseThrow(
                () ->
                    new UserMistake(
                        "the loudspeaker \""
                            + output.orElse("")
                            + "\" is missing or busy; choose another, or close the program that"
                            + " uses it; there are: "
                            + String.join(", ", OutputLine.names())));
    try (SourceDataLine speaker = opened.line();
        LineSamples line = new LineSamples(input)) {
      tellOfOld(out, opened.name(), input, line.rate());
      say(out, SoundChoice.HEARING);
      say(out, "Be quiet, please …");
      float[] quiet = record(line, QUIET_SECONDS);
      double background = Levels.of(quiet, quiet.length).backgroundDb();
      say(out, String.format(Locale.ROOT, "The room stands at %.0f dB.", background));
      double delay =
          with.isPresent() ? tapped(out, with.get(), speaker, line) : looped(out, speaker, line);
      SungSample sung = singSeconds > 0 ? sing(out, line, background) : nothingSung(background);
      Calibration found =
          new Calibration(
              opened.name(),
              input,
              delay,
              sung.levels(),
              sung.tuningCents(),
              sung.lowest(),
              sung.highest(),
              Instant.now(),
              with.isPresent() ? Calibration.Way.TAPPED : Calibration.Way.LOOP,
              line.rate());
      keep(found);
      say(out, "Kept for " + opened.name() + " and " + input + ".");
    }
    return 0;
  }

  private static Path folder() {
    return UserFolder.path().resolve("calibration");
  }

  private static void tellOfOld(PrintWriter out, String output, String input, int rate) {
    try {
      Calibration.stored(folder(), output, input)
          .flatMap(old -> old.complaint(Instant.now(), rate))
          .ifPresent(complaint -> say(out, complaint));
    } catch (UserMistake spoilt) {
      // It is measured anew this minute, and written over.
      say(out, "What was measured before is spoilt and will be replaced.");
    }
  }

  /** A loudspeaker's latency is kept for the backing, too, which needs no microphone. */
  private static void keep(Calibration found) throws IOException {
    found.store(folder());
    OutputLatencies kept;
    try {
      kept = OutputLatencies.read(SoundOptions.latencies());
    } catch (UserMistake spoilt) {
      kept = OutputLatencies.unmeasured();
    }
    double millis = Math.rint(1e4 * found.outputLatencySeconds()) / 10;
    kept.with(found.output(), millis).write(SoundOptions.latencies());
  }

  private static double looped(PrintWriter out, SourceDataLine speaker, LineSamples line)
      throws InterruptedException {
    say(out, "Now four chirps …");
    LoopDelay delay =
        Loop.delay(speaker, line)
            .orElseThrow(
                () ->
                    new UserMistake(
                        "the chirps were not heard; turn the loudspeaker up, or, with headphones,"
                            + " measure by tapping: holdfast calibrate --tap"));
    say(
        out,
        String.format(
            Locale.ROOT,
            "From loudspeaker to ear: %.1f ms (%d of %d chirps agree within %.1f ms).",
            1000 * delay.seconds(),
            delay.heard(),
            delay.sent(),
            Math.max(0.1, 1000 * delay.spreadSeconds())));
    return delay.seconds();
  }

  private static String tapWay(String way) {
    String word = way.strip().toLowerCase(Locale.ROOT);
    if (!Arrays.asList("key", "midi", "clap").contains(word)) {
      throw new UserMistake("--tap takes key, midi or clap, not \"" + way + "\"");
    }
    return word;
  }

  private static double tapped(
      PrintWriter out, String way, SourceDataLine speaker, LineSamples line)
      throws InterruptedException, IOException {
    say(out, "Tap with each of " + TapAlong.words() + "; the first few are to find the beat.");
    TapCheck check =
        switch (way) {
          case "midi" -> tappedOnKeyboard(out, speaker, line);
          case "clap" -> {
            say(out, "Clap near the microphone, with headphones on.");
            yield TapAlong.clapped(speaker, line);
          }
          default -> tappedOnTerminal(out, speaker, line);
        };
    say(
        out,
        String.format(
            Locale.ROOT,
            "Sound is heard %.0f ms late, give or take %.0f ms. (People tap a little before the"
                + " click, so I have added %.0f ms; a measurement through the loudspeaker is"
                + " finer.)",
            1000 * check.latencySeconds(),
            1000 * check.unsureSeconds(),
            1000 * check.habitSeconds()));
    return check.latencySeconds() + (way.equals("clap") ? 0 : UNMEASURED_INPUT_SECONDS);
  }

  private static TapCheck tappedOnTerminal(
      PrintWriter out, SourceDataLine speaker, LineSamples line)
      throws InterruptedException, IOException {
    try (LiveScreen screen = LiveScreen.open(out)) {
      if (!screen.hasKeys()) {
        throw new UserMistake(
            "there is no terminal to tap on; use --tap midi or --tap clap instead");
      }
      screen.say("Any letter or the space bar will do.");
      return TapAlong.by(
          speaker,
          line,
          (now, tap) -> {
            if (pressed(screen)) {
              tap.accept(now);
            }
          });
    }
  }

  private static boolean pressed(LiveScreen screen) {
    try {
      return screen.pressed();
    } catch (IOException gone) {
      throw new java.io.UncheckedIOException(gone);
    }
  }

  private static TapCheck tappedOnKeyboard(
      PrintWriter out, SourceDataLine speaker, LineSamples line) throws InterruptedException {
    Keyboard keyboard =
        Keyboard.all().stream()
            .findFirst()
            .orElseThrow(
                () -> new UserMistake("there is no MIDI keyboard; plug one in, or use --tap key"));
    say(out, "Tap any key of " + keyboard.name() + ".");
    try (Capture keys = keyboard.open(TakeClock.from(0))) {
      return TapAlong.by(speaker, line, (now, tap) -> tell(keys, tap));
    }
  }

  private static void tell(Capture keys, LongConsumer tap) {
    try {
      for (PlayEvent event : keys.await(Duration.ZERO).events()) {
        if (event instanceof PlayEvent.NoteOn) {
          tap.accept(Math.round(event.seconds() * 1e9));
        }
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private static SungSample nothingSung(double background) {
    Levels levels = new Levels(Levels.UNKNOWN.voiceDb(), background);
    return new SungSample(Profile.ANYONE.lowest(), Profile.ANYONE.highest(), 0, levels, 0);
  }

  private SungSample sing(PrintWriter out, LineSamples line, double background) {
    say(out, "Now sing: your lowest note, then up to your highest, then what you like …");
    line.forget();
    long clippedBefore = line.clipped();
    float[] ear = record(line, singSeconds);
    SungSample sung =
        SungSample.of(ear, background, line.clipped() - clippedBefore)
            .orElseThrow(
                () ->
                    new UserMistake(
                        "no singing was heard on \""
                            + microphone
                            + "\"; come nearer, or choose another microphone with --microphone: "
                            + String.join(", ", Microphone.names())));
    say(out, sung.advice());
    say(
        out,
        String.format(
            Locale.ROOT,
            "You sang from %s to %s; your A4 is %.1f Hz.",
            PlainNotes.name(sung.lowest()),
            PlainNotes.name(sung.highest()),
            440 * Math.pow(2, sung.tuningCents() / 1200)));
    return sung;
  }

  private static float[] record(LineSamples line, double seconds) {
    int rate = line.rate();
    float[] recorded = new float[(int) (seconds * rate)];
    int have = line.read(recorded, 0, recorded.length);
    Resampler resampler = new Resampler(rate);
    float[] ear = new float[resampler.mostOutput(have)];
    return Arrays.copyOf(ear, resampler.push(recorded, 0, have, ear));
  }

  private static void say(PrintWriter out, String sentence) {
    out.println(sentence);
    out.flush();
  }
}
