package holdfast.backing.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/** Sound devices that can play, and lines into them. */
public final class OutputLine {

  private static final String SYSTEMS_OWN = "the system's sound device";

  private OutputLine() {}

  /**
   * A line to play something else than a backing through, on the device that a backing would take.
   *
   * @param name the device's name, by which its latency is kept
   * @param line open and not started; whoever has it closes it
   */
  public record Open(String name, SourceDataLine line) {}

  /**
   * Opens a line as {@link SoundChoice#open()} would.
   *
   * @param device part of a device's name; empty for the system's own choice
   * @return empty where there is no such device, or it is busy
   */
  public static Optional<Open> open(Optional<String> device, int bufferMillis) {
    Optional<Source> source =
        device.isPresent()
            ? named(device.get(), bufferMillis)
            : Optional.of(preferred(bufferMillis));
    return source.flatMap(s -> s.open().map(line -> new Open(s.name(), line)));
  }

  /** A device that can be asked for a line again and again. */
  interface Source {

    /** The device's name. */
    String name();

    /** A fresh line, opened and not started; empty where there is none just now. */
    Optional<SourceDataLine> open();
  }

  /** The names of all devices that play our format; the system's own choice comes first. */
  public static List<String> names() {
    List<String> names = new ArrayList<>();
    for (Mixer.Info info : playing()) {
      names.add(info.getName());
    }
    return names;
  }

  /**
   * What people call the device that is opened where this is asked for.
   *
   * @param part part of a device's name; empty for the system's own choice
   */
  public static String nameOf(Optional<String> part) {
    return part.flatMap(words -> named(words, SoundChoice.SAFE_BUFFER_MILLIS))
        .map(Source::name)
        .orElse(SYSTEMS_OWN);
  }

  /**
   * The system's default device.
   *
   * @param bufferMillis how much sound waits in the line: latency against safety
   */
  static Source preferred(int bufferMillis) {
    return new Source() {
      @Override
      public String name() {
        return SYSTEMS_OWN;
      }

      @Override
      public Optional<SourceDataLine> open() {
        try {
          return Optional.of(opened(AudioSystem.getSourceDataLine(StreamSynth.FORMAT)));
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
          return Optional.empty();
        }
      }

      private SourceDataLine opened(SourceDataLine line) throws LineUnavailableException {
        line.open(StreamSynth.FORMAT, bufferBytes(bufferMillis));
        return line;
      }
    };
  }

  /** The first device whose name contains this text, in whatever case; empty where none does. */
  static Optional<Source> named(String part, int bufferMillis) {
    String wanted = part.toLowerCase(java.util.Locale.ROOT);
    return playing().stream()
        .filter(info -> info.getName().toLowerCase(java.util.Locale.ROOT).contains(wanted))
        .findFirst()
        .map(info -> of(info, bufferMillis));
  }

  private static Source of(Mixer.Info info, int bufferMillis) {
    return new Source() {
      @Override
      public String name() {
        return info.getName();
      }

      @Override
      public Optional<SourceDataLine> open() {
        try {
          SourceDataLine line = AudioSystem.getSourceDataLine(StreamSynth.FORMAT, info);
          line.open(StreamSynth.FORMAT, bufferBytes(bufferMillis));
          return Optional.of(line);
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
          return Optional.empty();
        }
      }
    };
  }

  private static List<Mixer.Info> playing() {
    DataLine.Info wanted = new DataLine.Info(SourceDataLine.class, StreamSynth.FORMAT);
    List<Mixer.Info> playing = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (AudioSystem.getMixer(info).isLineSupported(wanted)) {
        playing.add(info);
      }
    }
    return playing;
  }

  private static int bufferBytes(int millis) {
    int frames = Math.round(StreamSynth.FORMAT.getFrameRate() * millis / 1000);
    return frames * StreamSynth.FORMAT.getFrameSize();
  }
}
