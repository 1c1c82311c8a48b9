package holdfast.command;

import holdfast.backing.sound.OutputLine;
import holdfast.book.UserFolder;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.Resampler;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Loop;
import holdfast.listening.microphone.LineSamples;
import holdfast.listening.microphone.Microphone;
import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.FileEar;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.session.input.Inputs;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Measures microphone, loudspeaker, room and singer, and keeps what it found. */
@Command(
    name = "calibrate",
    mixinStandardHelpOptions = true,
    description = {
      "Measures delay, noise, level, tuning and range, and keeps them for this pair of devices.",
      "First be quiet for two seconds; a chirp sounds three times; then sing low and high."
    })
final class CalibrateCommand implements Callable<Integer> {

  private static final double QUIET_SECONDS = 2;

  /** Three chirps, and the middle one counts: one may fall into a cough. */
  private static final int CHIRPS = 3;

  private static final double TOO_HOT_DB = -9;
  private static final double TOO_QUIET_DB = -50;

  @Option(
      names = "--microphone",
      paramLabel = "NAME",
      description = "Part of the microphone's name; else the system's own.")
  private String microphone = "";

  @Option(
      names = "--output",
      paramLabel = "NAME",
      description = "Part of the loudspeaker's name; else the system's own.")
  private String output = "";

  @Option(
      names = "--sing-seconds",
      paramLabel = "N",
      description = "How long to listen to the singing (default: ${DEFAULT-VALUE}; 0: not at all).",
      defaultValue = "10")
  private int singSeconds;

  @Option(names = "--devices", description = "Only name the microphones.")
  private boolean devices;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException, InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    if (devices) {
      Microphone.names().forEach(out::println);
      return 0;
    }
    if (singSeconds < 0 || singSeconds > 120) {
      throw new UserMistake("--sing-seconds must be 0 to 120, not " + singSeconds);
    }
    try (LineSamples line = new LineSamples(microphone)) {
      say(out, "Be quiet, please …");
      float[] quiet = record(line, QUIET_SECONDS);
      double background = Levels.of(quiet, quiet.length).backgroundDb();
      say(out, String.format(Locale.ROOT, "The room stands at %.0f dB.", background));
      double delay = delay(line);
      say(out, String.format(Locale.ROOT, "From loudspeaker to ear: %.1f ms.", 1000 * delay));
      double voice = Levels.UNKNOWN.voiceDb();
      double tuning = 0;
      int lowest = 36;
      int highest = 108;
      if (singSeconds > 0) {
        say(out, "Now sing: your lowest note, then up to your highest, then what you like …");
        float[] sung = record(line, singSeconds);
        voice = Levels.of(sung, sung.length).voiceDb();
        judgeLevel(out, voice, line.clipped());
        FileEar.Hearing heard =
            FileEar.hear(sung, Ear.LOWEST_HZ, Ear.HIGHEST_HZ, (seconds, hz, isSung) -> {});
        if (heard.notes().isEmpty()) {
          throw new UserMistake(
              "no singing was heard on \""
                  + microphone
                  + "\"; come nearer, or choose another"
                  + " microphone with --microphone");
        }
        lowest = heard.notes().stream().mapToInt(PlayedNote::pitch).min().orElseThrow();
        highest = heard.notes().stream().mapToInt(PlayedNote::pitch).max().orElseThrow();
        tuning = heard.tuningCents();
        say(
            out,
            String.format(
                Locale.ROOT,
                "You sang from MIDI %d to %d; your A4 is %.1f Hz.",
                lowest,
                highest,
                440 * Math.pow(2, tuning / 1200)));
      }
      Calibration found =
          new Calibration(
              OutputLine.nameOf(Optional.of(output).filter(words -> !words.isEmpty())),
              Inputs.microphone(microphone).name(),
              delay,
              new Levels(voice, background),
              tuning,
              lowest,
              highest,
              Instant.now());
      found.store(UserFolder.path().resolve("calibration"));
      say(out, "Kept for these devices.");
    }
    return 0;
  }

  private double delay(LineSamples line) throws InterruptedException {
    double[] delays = new double[CHIRPS];
    int heard = 0;
    for (int i = 0; i < CHIRPS; i++) {
      OptionalDouble delay = Loop.delay(output, line);
      if (delay.isPresent()) {
        delays[heard++] = delay.getAsDouble();
      }
    }
    if (heard < 2) {
      throw new UserMistake(
          "the chirp was not heard; turn the loudspeaker up or take the headphones off while"
              + " calibrating");
    }
    Arrays.sort(delays, 0, heard);
    return delays[heard / 2];
  }

  private static void judgeLevel(PrintWriter out, double voiceDb, long clipped) {
    if (clipped > 100 || voiceDb > TOO_HOT_DB) {
      say(out, "That was too loud for the microphone: turn it down or step back.");
    } else if (voiceDb < TOO_QUIET_DB) {
      say(out, "That was very soft: turn the microphone up or come nearer.");
    } else {
      say(out, "The level is good.");
    }
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
