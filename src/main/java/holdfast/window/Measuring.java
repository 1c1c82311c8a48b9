package holdfast.window;

import holdfast.backing.SoundPlayer;
import holdfast.listening.audio.Resampler;
import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Loop;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.LineSamples;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.window.play.TakeRequest;
import java.io.IOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutionException;
import java.util.function.BiConsumer;
import javax.swing.SwingWorker;

/**
 * Measures room and delay of the chosen microphone and loudspeaker: two seconds and three chirps.
 */
final class Measuring extends SwingWorker<Double, Void> {

  private static final double QUIET_SECONDS = 2;

  /** Three chirps, and the middle one counts: one may fall into a cough. */
  private static final int CHIRPS = 3;

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
    String output;
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      output = band.output();
    }
    try (LineSamples line = new LineSamples(microphone)) {
      float[] recorded = new float[(int) (QUIET_SECONDS * line.rate())];
      int have = line.read(recorded, 0, recorded.length);
      Resampler resampler = new Resampler(line.rate());
      float[] ear = new float[resampler.mostOutput(have)];
      int length = resampler.push(recorded, 0, have, ear);
      double background = Levels.of(ear, length).backgroundDb();
      double[] delays = new double[CHIRPS];
      int heard = 0;
      for (int i = 0; i < CHIRPS; i++) {
        OptionalDouble delay = Loop.delay(devices.preferences().text("output").orElse(""), line);
        if (delay.isPresent()) {
          delays[heard++] = delay.getAsDouble();
        }
      }
      if (heard < 2) {
        throw new UserMistake(desk.words().say("settings.no-chirp"));
      }
      Arrays.sort(delays, 0, heard);
      Profile profile = devices.profile();
      new Calibration(
              output,
              microphone,
              delays[heard / 2],
              new Levels(Levels.UNKNOWN.voiceDb(), background),
              0,
              profile.lowest(),
              profile.highest(),
              Instant.now())
          .store(devices.folder().resolve("calibration"));
      return 1000 * delays[heard / 2];
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
