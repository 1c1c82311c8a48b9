package holdfast.backing.sound;

import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.sound.sampled.SourceDataLine;

/**
 * How the backing is to sound, and the way from there to an open output.
 *
 * @param device part of a device's name; empty for the system's own choice
 * @param bank the instruments
 * @param volume 0 to 1; begin low
 * @param bufferMillis how much sound waits in the line, 10 to 500 ms
 * @param latencies how long each device takes from its buffer to the ear
 */
public record SoundChoice(
    Optional<String> device,
    SoundBank bank,
    double volume,
    int bufferMillis,
    OutputLatencies latencies) {

  /** Begins low, for it is heard on headphones too. Practice, no source. */
  public static final double LOW_VOLUME = 0.5;

  /**
   * A machine with two cores and twenty programs at work let 80 ms run dry nine times a minute, 160
   * ms four times and 250 ms never. The clock knows of it, so nobody plays late because of it; only
   * a stop takes so long.
   */
  public static final int SAFE_BUFFER_MILLIS = 250;

  /** For a player whose keyboard is sounded by us: more than 20 ms is felt as late. */
  public static final int QUICK_BUFFER_MILLIS = 20;

  /** Said once before the first sound. */
  public static final String HEARING =
      "Begin softly, and take the headphones off when your ears ring: hearing does not grow back.";

  private static final String NO_DEVICE =
      "No sound device was found: the backing runs silently and in time.";

  /** Kept in a field, or the garbage collector would take the level along. */
  private static final Logger PREFERENCES = Logger.getLogger("java.util.prefs");

  static {
    // The JDK's synthesizer looks into the preferences, which greets with a log line on the screen.
    PREFERENCES.setLevel(Level.SEVERE);
  }

  /** Checks the ranges. */
  public SoundChoice {
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("a volume is 0 to 1, not " + volume);
    }
    if (bufferMillis < 10 || bufferMillis > 500) {
      throw new IllegalArgumentException("a buffer holds 10 to 500 ms, not " + bufferMillis);
    }
  }

  /** The system's device, Java's instruments, a low volume. */
  public static SoundChoice usual() {
    return new SoundChoice(
        Optional.empty(),
        SoundBank.builtIn(),
        LOW_VOLUME,
        SAFE_BUFFER_MILLIS,
        OutputLatencies.unmeasured());
  }

  /** The same with other instruments. */
  public SoundChoice with(SoundBank other) {
    return new SoundChoice(device, other, volume, bufferMillis, latencies);
  }

  /**
   * Opens the output. Never fails: where there is no device the output is silent, keeps time and
   * says why in {@link SoundOut#trouble()}.
   */
  public SoundOut open() {
    Optional<String> trouble = Optional.empty();
    OutputLine.Source source = OutputLine.preferred(bufferMillis);
    if (device.isPresent()) {
      Optional<OutputLine.Source> wanted = OutputLine.named(device.get(), bufferMillis);
      if (wanted.isEmpty()) {
        trouble =
            Optional.of(
                "There is no sound device \""
                    + device.get()
                    + "\"; the system's own is used. There are: "
                    + String.join(", ", OutputLine.names())
                    + ".");
      }
      source = wanted.orElse(source);
    }
    long latencyNanos = latencies.nanos(source.name());
    Optional<SourceDataLine> line = source.open();
    if (line.isEmpty()) {
      return new SilentOut(NO_DEVICE);
    }
    Optional<StreamSynth> synth = StreamSynth.open(bank);
    if (synth.isPresent()) {
      return new LineOut(synth.get(), source, line.get(), volume, latencyNanos, trouble);
    }
    line.get().close();
    return SelfPlayingSynth.open(bank, volume, latencyNanos)
        .orElseGet(() -> new SilentOut(NO_DEVICE));
  }
}
