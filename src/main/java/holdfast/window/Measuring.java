package holdfast.window;

import holdfast.backing.sound.OutputLine;
import holdfast.backing.sound.SoundChoice;
import holdfast.listening.audio.Resampler;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Loop;
import holdfast.listening.calibration.LoopDelay;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.LineSamples;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.window.play.TakeRequest;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.function.BiConsumer;
import javax.sound.sampled.SourceDataLine;
import javax.swing.SwingWorker;

/**
 * Measures room and delay of the chosen microphone and loudspeaker: two seconds and four chirps.
 */
final class Measuring extends SwingWorker<Double, Void> {

  private static final double QUIET_SECONDS = 2;

  private final Devices devices;
  private final Desk desk;
  private final BiConsumer<Optional<Double>, String> told;

  Measuring(Desk desk, BiConsumer<Optional<Double>, String> told) {
    this.desk = desk;
    this.devices = desk.devices();
    this.told = told;
  }

  @Override
  protected Double doInBackground() throws IOException, InterruptedException {
    String microphone = devices.input(TakeRequest.Who.VOICE).name();
    Optional<String> wanted =
        devices.preferences().text("output").filter(words -> !words.isEmpty());
    OutputLine.Open open =
        OutputLine.open(wanted, SoundChoice.SAFE_BUFFER_MILLIS)
            .orElseThrow(() -> new UserMistake(desk.words().say("settings.no-chirp")));
    try (SourceDataLine speaker = open.line();
        LineSamples line = new LineSamples(microphone)) {
      float[] recorded = new float[(int) (QUIET_SECONDS * line.rate())];
      int have = line.read(recorded, 0, recorded.length);
      Resampler resampler = new Resampler(line.rate());
      float[] ear = new float[resampler.mostOutput(have)];
      int length = resampler.push(recorded, 0, have, ear);
      double background = Levels.of(ear, length).backgroundDb();
      LoopDelay delay =
          Loop.delay(speaker, line)
              .orElseThrow(() -> new UserMistake(desk.words().say("settings.no-chirp")));
      Profile profile = devices.profile();
      new Calibration(
              open.name(),
              microphone,
              delay.seconds(),
              new Levels(Levels.UNKNOWN.voiceDb(), background),
              0,
              profile.lowest(),
              profile.highest(),
              Instant.now(),
              Calibration.Way.LOOP,
              line.rate())
          .store(devices.folder().resolve("calibration"));
      return 1000 * delay.seconds();
    }
  }

  @Override
  protected void done() {
    try {
      told.accept(Optional.of(get()), "");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException e) {
      told.accept(Optional.empty(), String.valueOf(e.getCause().getMessage()));
    }
  }
}
