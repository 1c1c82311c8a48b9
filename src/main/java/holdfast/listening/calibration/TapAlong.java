package holdfast.listening.calibration;

import holdfast.listening.microphone.LineSamples;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongConsumer;
import javax.sound.sampled.SourceDataLine;

/** Clicks, taps, and what they tell, through the machine's own devices. */
public final class TapAlong {

  private TapAlong() {}

  /** Whoever sees taps come in: a key, a pad. */
  @FunctionalInterface
  public interface TapSource {
    /**
     * Looks for taps, without waiting.
     *
     * @param nanoTime the machine's clock now
     * @param tap called with the moment of each tap, in nanoseconds of that clock
     */
    void look(long nanoTime, LongConsumer tap);
  }

  /** How many clicks there are, and how many seconds from one to the next. */
  public static String words() {
    return ClickTrain.CLICKS + " clicks, " + Math.round(60 / ClickTrain.APART) + " a minute";
  }

  /**
   * Plays the clicks and takes the taps.
   *
   * @param output open in 16 bit; started by this
   * @param microphone a line to run beside, whose sound is let go
   */
  public static TapCheck by(SourceDataLine output, LineSamples microphone, TapSource source)
      throws InterruptedException {
    output.start();
    return by(new SoundLoop(output, microphone), source);
  }

  static TapCheck by(LoopDevices devices, TapSource source) throws InterruptedException {
    List<Double> taps = new ArrayList<>();
    List<Double> clicks =
        ClickTrain.play(devices, now -> source.look(now, tap -> taps.add(tap * 1e-9)));
    return TapCheck.of(clicks, taps);
  }

  /** The same by clapping into the microphone, with headphones on. */
  public static TapCheck clapped(SourceDataLine output, LineSamples microphone)
      throws InterruptedException {
    output.start();
    microphone.forget();
    return clapped(new SoundLoop(output, microphone));
  }

  static TapCheck clapped(LoopDevices devices) throws InterruptedException {
    Recorder recorder = new Recorder(devices);
    List<Double> clicks = ClickTrain.play(devices, recorder::look);
    List<Double> taps = new ArrayList<>();
    for (long clap : Claps.in(recorder.samples, recorder.have, devices.inRate())) {
      recorder.count.secondsOf((double) clap).ifPresent(taps::add);
    }
    return TapCheck.of(clicks, taps);
  }

  private static final class Recorder {
    private final LoopDevices devices;
    private final SampleCount count;
    private final float[] block = new float[1024];
    private float[] samples = new float[1 << 20];
    private int have;

    Recorder(LoopDevices devices) {
      this.devices = devices;
      this.count = new SampleCount(devices.inRate());
    }

    void look(long now) {
      int ready = devices.ready();
      count.observe(have + ready, now);
      while (ready > 0) {
        int got = devices.read(block, Math.min(block.length, ready));
        if (got <= 0) {
          return;
        }
        if (have + got > samples.length) {
          samples = Arrays.copyOf(samples, 2 * samples.length);
        }
        System.arraycopy(block, 0, samples, have, got);
        have += got;
        ready -= got;
      }
    }
  }
}
