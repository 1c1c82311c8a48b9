package holdfast.listening.calibration;

import holdfast.disk.WholeFile;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.Quoted;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;

/**
 * What was measured of one pair of devices and the person at it.
 *
 * @param output name of the loudspeaker's device
 * @param input name of the microphone's device
 * @param delaySeconds from a sound's leaving the output's line to its standing ready in the input's
 * @param levels level of the voice and of the room, decibels under full scale
 * @param tuningCents the player's tuning over A = 440 Hz
 * @param lowest lowest pitch that was sung, MIDI
 * @param highest highest pitch that was sung, MIDI
 * @param measured when
 * @param way how the delay was found
 * @param inputRate samples a second of the input when it was measured; 0 where that is not known
 */
public record Calibration(
    String output,
    String input,
    double delaySeconds,
    Levels levels,
    double tuningCents,
    int lowest,
    int highest,
    Instant measured,
    Way way,
    int inputRate) {

  /** How a delay was found. */
  public enum Way {
    /** A chirp went through loudspeaker and microphone. */
    LOOP,
    /** A person tapped along to clicks: good to some 15 ms. */
    TAPPED
  }

  /** Longer than any sound system keeps sound: such a delay was not measured but mistaken. */
  private static final double LONGEST_DELAY = 1.0;

  /** Devices, drivers and rooms change; after this a measurement should be renewed. */
  private static final Duration GOOD_FOR = Duration.ofDays(60);

  /**
   * Of a loop's delay the input has no more than this, in seconds: converters and drivers hand
   * sound over within some milliseconds, while loudspeakers without a cable take their time. From
   * memory; a loop alone cannot tell the two apart.
   */
  private static final double MOST_INPUT_DELAY = 0.010;

  /** Measured through the loop, at a rate that nobody wrote down. */
  public Calibration(
      String output,
      String input,
      double delaySeconds,
      Levels levels,
      double tuningCents,
      int lowest,
      int highest,
      Instant measured) {
    this(output, input, delaySeconds, levels, tuningCents, lowest, highest, measured, Way.LOOP, 0);
  }

  /** What of the delay lies behind the output's line: when a backing is heard, in seconds. */
  public double outputLatencySeconds() {
    return delaySeconds - Math.min(delaySeconds / 2, MOST_INPUT_DELAY);
  }

  /**
   * What should be said about it before it is used; empty where it is as good as new.
   *
   * @param now the time
   * @param rateNow samples a second of the input as it is now; 0 where that is not known
   */
  public Optional<String> complaint(Instant now, int rateNow) {
    if (rateNow > 0 && inputRate > 0 && rateNow != inputRate) {
      return Optional.of(
          "The microphone was measured at "
              + inputRate
              + " Hz and runs at "
              + rateNow
              + " Hz now; measure it again: holdfast calibrate.");
    }
    if (measured.isAfter(now.plus(Duration.ofDays(1)))) {
      return Optional.of(
          "The microphone was measured at a time that is yet to come; look at this machine's clock"
              + " and measure again: holdfast calibrate.");
    }
    if (isStale(now)) {
      return Optional.of(
          "It is "
              + Duration.between(measured, now).toDays()
              + " days ago that this microphone was measured; measure it again: holdfast"
              + " calibrate.");
    }
    return Optional.empty();
  }

  /** Checks that the delay and the range are possible. */
  public Calibration {
    if (!(delaySeconds >= 0 && delaySeconds <= LONGEST_DELAY)) {
      throw new IllegalArgumentException(
          "a delay must be 0 to 1 second, not " + delaySeconds + "; calibrate again");
    }
    if (lowest < 0 || highest > 127 || lowest > highest) {
      throw new IllegalArgumentException(
          "a range must rise, not " + lowest + " to " + highest + "; calibrate again");
    }
  }

  /** Whether it is so old that it should be measured again. */
  public boolean isStale(Instant now) {
    return Duration.between(measured, now).compareTo(GOOD_FOR) > 0;
  }

  /** The file of a pair of devices in a folder. */
  public static Path file(Path folder, String output, String input) {
    String name = (output + "--" + input).toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9-]+", "-");
    String tail = Integer.toHexString((output + "\n" + input).hashCode());
    return folder.resolve(name.substring(0, Math.min(60, name.length())) + "-" + tail + ".txt");
  }

  /**
   * Stores it in the file of its pair of devices.
   *
   * @throws UserMistake where it cannot be written; what was measured before is still there
   */
  public void store(Path folder) throws IOException {
    Files.createDirectories(folder);
    Path file = file(folder, output, input);
    WholeFile.write(file, text());
  }

  private String text() {
    return String.format(
        Locale.ROOT,
        "output = %s%ninput = %s%ndelay_seconds = %.6f%nvoice_db = %.1f%nbackground_db = %.1f%n"
            + "tuning_cents = %.1f%nlowest = %d%nhighest = %d%nmeasured = %s%nway = %s%n"
            + "input_rate = %d%n",
        output.replace('\n', ' '),
        input.replace('\n', ' '),
        delaySeconds,
        levels.voiceDb(),
        levels.backgroundDb(),
        tuningCents,
        lowest,
        highest,
        measured,
        way.name().toLowerCase(Locale.ROOT),
        inputRate);
  }

  /**
   * What is stored of a pair of devices.
   *
   * @throws UserMistake when the file was spoilt, naming it and the mend
   */
  public static Optional<Calibration> stored(Path folder, String output, String input) {
    Path file = file(folder, output, input);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      java.util.Map<String, String> values = new java.util.HashMap<>();
      for (String line : Files.readAllLines(file)) {
        String[] sides = line.split("=", 2);
        if (sides.length == 2) {
          values.put(sides[0].strip(), sides[1].strip());
        }
      }
      return Optional.of(
          new Calibration(
              values.getOrDefault("output", ""),
              values.getOrDefault("input", ""),
              number(values, "delay_seconds"),
              new Levels(number(values, "voice_db"), number(values, "background_db")),
              number(values, "tuning_cents"),
              (int) number(values, "lowest"),
              (int) number(values, "highest"),
              Instant.parse(values.getOrDefault("measured", "")),
              Way.valueOf(values.getOrDefault("way", "loop").toUpperCase(Locale.ROOT)),
              Integer.parseInt(values.getOrDefault("input_rate", "0"))));
    } catch (IOException | IllegalArgumentException | DateTimeParseException spoilt) {
      throw new UserMistake(
          file
              + " is spoilt ("
              + Quoted.shortly(String.valueOf(spoilt.getMessage()))
              + "); delete it and run: holdfast calibrate",
          spoilt);
    }
  }

  private static double number(java.util.Map<String, String> values, String key) {
    String value = values.get(key);
    if (value == null) {
      throw new IllegalArgumentException("there is no line \"" + key + " = …\"");
    }
    double number = Double.parseDouble(value);
    if (!Double.isFinite(number)) {
      throw new IllegalArgumentException(key + " is no number that can be measured");
    }
    return number;
  }
}
