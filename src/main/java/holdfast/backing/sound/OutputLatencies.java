package holdfast.backing.sound;

import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;

/**
 * One latency for each sound device: how many milliseconds pass from the moment when sound leaves
 * our buffer to the moment when it is heard. No program can ask a device for it; it is measured
 * once and kept in a small text file, a line a device.
 *
 * @param millis by the device's name
 */
public record OutputLatencies(Map<String, Double> millis) {

  /** Before it is measured. Sound systems add 5 to 30 ms of their own; from memory. */
  static final double UNMEASURED_MILLIS = 15;

  /** Longer than any wireless loudspeaker; more is a slip of the pen. */
  private static final double LONGEST_MILLIS = 1000;

  /** Copies, and checks the ranges. */
  public OutputLatencies {
    millis = Map.copyOf(millis);
    millis.forEach(
        (device, value) -> {
          if (!(value >= 0 && value <= LONGEST_MILLIS)) {
            throw new IllegalArgumentException(
                "the latency of " + device + " must be 0 to 1000 ms, not " + value);
          }
        });
  }

  /** Nothing has been measured yet. */
  public static OutputLatencies unmeasured() {
    return new OutputLatencies(Map.of());
  }

  /**
   * Reads the file; one that does not exist holds nothing.
   *
   * @throws UserMistake where a line holds no latency
   */
  public static OutputLatencies read(Path file) {
    if (!Files.exists(file)) {
      return unmeasured();
    }
    Properties lines = new Properties();
    try (Reader reader = Files.newBufferedReader(file)) {
      lines.load(reader);
    } catch (IOException | IllegalArgumentException e) {
      throw new UserMistake(file + " cannot be read; delete it and measure again", e);
    }
    Map<String, Double> millis = new TreeMap<>();
    for (String device : lines.stringPropertyNames()) {
      String value = lines.getProperty(device);
      try {
        millis.put(device, Double.parseDouble(value));
      } catch (NumberFormatException e) {
        throw new UserMistake(
            file + ", " + device + ": \"" + value + "\" is not a number of milliseconds", e);
      }
    }
    try {
      return new OutputLatencies(millis);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(file + ": " + e.getMessage(), e);
    }
  }

  /** The same, and this device takes so long. */
  public OutputLatencies with(String device, double latencyMillis) {
    Map<String, Double> more = new TreeMap<>(millis);
    more.put(device, latencyMillis);
    return new OutputLatencies(more);
  }

  /** This device's latency in nanoseconds, measured or not. */
  public long nanos(String device) {
    return Math.round(millis.getOrDefault(device, UNMEASURED_MILLIS) * 1e6);
  }

  /** Writes the file, whole or not at all. */
  public void write(Path file) throws IOException {
    Properties lines = new Properties();
    millis.forEach((device, value) -> lines.setProperty(device, value.toString()));
    Files.createDirectories(file.toAbsolutePath().getParent());
    StringWriter text = new StringWriter();
    lines.store(text, "milliseconds from our buffer to the ear, by sound device");
    WholeFile.write(file, text.toString());
  }
}
