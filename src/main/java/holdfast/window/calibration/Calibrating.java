package holdfast.window.calibration;

import holdfast.backing.sound.OutputLatencies;
import holdfast.backing.sound.OutputLine;
import holdfast.backing.sound.SoundChoice;
import holdfast.listening.audio.Resampler;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Loop;
import holdfast.listening.calibration.LoopDelay;
import holdfast.listening.calibration.Profile;
import holdfast.listening.calibration.SungSample;
import holdfast.listening.calibration.TapAlong;
import holdfast.listening.calibration.TapCheck;
import holdfast.listening.microphone.LineSamples;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.window.Desk;
import holdfast.window.Devices;
import holdfast.window.Words;
import holdfast.window.play.TakeRequest;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javax.sound.sampled.SourceDataLine;
import javax.swing.SwingWorker;

/** One step of the measuring, with the chosen microphone and loudspeaker. */
final class Calibrating extends SwingWorker<String, String> {

  /** What is measured. */
  enum Step {
    CHIRPS,
    TAPS,
    SONG
  }

  private static final double QUIET_SECONDS = 2;
  private static final double SONG_SECONDS = 10;

  /** Tapping keys hears no sound back: the input's share is then taken to be this. */
  private static final double UNMEASURED_INPUT_SECONDS = 0.010;

  private final Devices devices;
  private final Words words;
  private final UnaryOperator<String> said;
  private final UnaryOperator<String> mistake;
  private final Step step;
  private final Queue<Long> taps;
  private final Consumer<String> saying;
  private final BiConsumer<Boolean, String> told;

  /**
   * A step.
   *
   * @param taps when the player tapped, in nanoseconds of the machine's clock
   * @param saying told what to do now
   * @param told whether it went well, and what was found or why not
   */
  Calibrating(
      Desk desk,
      Step step,
      Queue<Long> taps,
      Consumer<String> saying,
      BiConsumer<Boolean, String> told) {
    this.devices = desk.devices();
    this.words = desk.words();
    this.said = desk::said;
    this.mistake = desk::mistake;
    this.step = step;
    this.taps = taps;
    this.saying = saying;
    this.told = told;
  }

  @Override
  protected String doInBackground() throws IOException, InterruptedException {
    String microphone = devices.input(TakeRequest.Who.VOICE).name();
    Optional<String> wanted = devices.preferences().text("output").filter(name -> !name.isEmpty());
    OutputLine.Open open =
        OutputLine.open(wanted, SoundChoice.SAFE_BUFFER_MILLIS)
            .orElseThrow(() -> new UserMistake(words.say("settings.no-chirp")));
    try (SourceDataLine speaker = open.line();
        LineSamples line = new LineSamples(microphone)) {
      publish(words.say("calibrate.quiet"));
      float[] quiet = record(line, QUIET_SECONDS);
      double background = Levels.of(quiet, quiet.length).backgroundDb();
      Path folder = devices.folder().resolve("calibration");
      Optional<Calibration> before = before(folder, open.name(), microphone);
      return switch (step) {
        case CHIRPS -> {
          publish(words.say("calibrate.chirps.now"));
          LoopDelay delay =
              Loop.delay(speaker, line)
                  .orElseThrow(() -> new UserMistake(words.say("settings.no-chirp")));
          keep(
              delayed(
                  open.name(),
                  microphone,
                  delay.seconds(),
                  background,
                  before,
                  Calibration.Way.LOOP,
                  line));
          yield words.say("settings.measured", Math.round(1000 * delay.seconds()));
        }
        case TAPS -> {
          publish(words.say("calibrate.taps.now"));
          taps.clear();
          TapCheck check = TapAlong.by(speaker, line, (now, tap) -> drain(tap));
          double delay = check.latencySeconds() + UNMEASURED_INPUT_SECONDS;
          keep(
              delayed(
                  open.name(),
                  microphone,
                  delay,
                  background,
                  before,
                  Calibration.Way.TAPPED,
                  line));
          yield words.say(
              "calibrate.tapped",
              Math.round(1000 * check.latencySeconds()),
              Math.round(1000 * check.unsureSeconds()));
        }
        case SONG -> {
          Calibration old =
              before.orElseThrow(() -> new UserMistake(words.say("calibrate.delay-first")));
          publish(words.say("calibrate.sing.now"));
          line.forget();
          long clipped = line.clipped();
          float[] ear = record(line, SONG_SECONDS);
          SungSample sung =
              SungSample.of(ear, background, line.clipped() - clipped)
                  .orElseThrow(() -> new UserMistake(words.say("calibrate.no-song")));
          keep(sung(old, sung));
          yield words.say(
                  "calibrate.sung",
                  devices.preferences().noteNames().pitch(sung.lowest(), Optional.empty()),
                  devices.preferences().noteNames().pitch(sung.highest(), Optional.empty()),
                  sung.highest() - sung.lowest())
              + " "
              + said.apply(sung.advice());
        }
      };
    }
  }

  private void drain(java.util.function.LongConsumer tap) {
    for (Long at = taps.poll(); at != null; at = taps.poll()) {
      tap.accept(at);
    }
  }

  private static Optional<Calibration> before(Path folder, String output, String input) {
    try {
      return Calibration.stored(folder, output, input);
    } catch (UserMistake spoilt) {
      // It is measured anew this minute, and written over.
      return Optional.empty();
    }
  }

  private Calibration delayed(
      String output,
      String input,
      double seconds,
      double background,
      Optional<Calibration> before,
      Calibration.Way way,
      LineSamples line) {
    Profile profile = devices.profile();
    return new Calibration(
        output,
        input,
        seconds,
        new Levels(
            before.map(old -> old.levels().voiceDb()).orElse(Levels.UNKNOWN.voiceDb()), background),
        before.map(Calibration::tuningCents).orElse(0.0),
        before.map(Calibration::lowest).orElse(profile.lowest()),
        before.map(Calibration::highest).orElse(profile.highest()),
        Instant.now(),
        way,
        line.rate());
  }

  private static Calibration sung(Calibration old, SungSample sung) {
    return new Calibration(
        old.output(),
        old.input(),
        old.delaySeconds(),
        sung.levels(),
        sung.tuningCents(),
        sung.lowest(),
        sung.highest(),
        old.measured(),
        old.way(),
        old.inputRate());
  }

  /** A loudspeaker's latency is kept for the backing, too, which needs no microphone. */
  private void keep(Calibration found) throws IOException {
    found.store(devices.folder().resolve("calibration"));
    Path latencies = devices.folder().resolve("output-latency.properties");
    OutputLatencies kept;
    try {
      kept = OutputLatencies.read(latencies);
    } catch (UserMistake spoilt) {
      kept = OutputLatencies.unmeasured();
    }
    double millis = Math.rint(1e4 * found.outputLatencySeconds()) / 10;
    kept.with(found.output(), millis).write(latencies);
  }

  private static float[] record(LineSamples line, double seconds) {
    float[] recorded = new float[(int) (seconds * line.rate())];
    int have = line.read(recorded, 0, recorded.length);
    Resampler resampler = new Resampler(line.rate());
    float[] ear = new float[resampler.mostOutput(have)];
    return Arrays.copyOf(ear, resampler.push(recorded, 0, have, ear));
  }

  @Override
  protected void process(List<String> sentences) {
    sentences.forEach(saying);
  }

  @Override
  protected void done() {
    try {
      told.accept(true, get());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      told.accept(false, mistake.apply(String.valueOf(e.getCause().getMessage())));
    }
  }
}
