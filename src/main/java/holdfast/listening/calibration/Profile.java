package holdfast.listening.calibration;

import holdfast.listening.pitch.Manner;
import holdfast.mistake.Quoted;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What to expect of a kind of voice or instrument.
 *
 * @param name as it is asked for
 * @param lowest lowest sounding pitch, MIDI
 * @param highest highest sounding pitch, MIDI
 * @param writtenToSounding semitones from what is written to what sounds: −2 for a trumpet in B♭
 * @param manner how far over the room's noise a note must stand, and which shakes are one note
 */
public record Profile(String name, int lowest, int highest, int writtenToSounding, Manner manner) {

  /** Anyone: from a bass's low C to a piccolo's top. */
  public static final Profile ANYONE = new Profile("anyone", 36, 108, 0, Manner.ANYONE);

  /** Semitones that are still heard outside the range: players surprise. */
  private static final int MARGIN = 3;

  private static final List<String> SHIPPED =
      List.of(
          "child-voice",
          "voice",
          "low-voice",
          "keyboard",
          "trumpet",
          "alto-sax",
          "tenor-sax",
          "flute",
          "clarinet",
          "violin",
          "guitar",
          "trombone",
          "whistle");

  /** Checks that the range is one. */
  public Profile {
    if (lowest < 0 || highest > 127 || lowest >= highest) {
      throw new IllegalArgumentException("a range must rise, not " + lowest + " to " + highest);
    }
  }

  /** The names of the profiles that ship. */
  public static List<String> names() {
    return SHIPPED;
  }

  /**
   * The shipped profile of that name.
   *
   * @throws UserMistake when there is none
   */
  public static Profile named(String name) {
    if (!SHIPPED.contains(name)) {
      throw new UserMistake(
          "there is no profile \"" + name + "\"; there are " + String.join(", ", SHIPPED));
    }
    try (InputStream in = Profile.class.getResourceAsStream("/calibration/" + name + ".profile")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return parse(name, text, "calibration/" + name + ".profile");
    } catch (IOException broken) {
      throw new UncheckedIOException("the jar is broken", broken);
    }
  }

  /**
   * Reads a profile: lines {@code key = value}, and after {@code #} the reason or source.
   *
   * @throws UserMistake naming the line
   */
  public static Profile parse(String name, String text, String source) {
    Map<String, Double> values = new HashMap<>();
    int number = 0;
    for (String line : text.split("\n", -1)) {
      number++;
      String bare = line.replaceFirst("#.*", "").trim();
      if (bare.isEmpty()) {
        continue;
      }
      String[] sides = bare.split("=", 2);
      try {
        values.put(sides[0].trim(), Double.valueOf(sides[1].trim()));
      } catch (NumberFormatException | ArrayIndexOutOfBoundsException wrong) {
        throw new UserMistake(
            source
                + ", line "
                + number
                + ": write \"key = number\", not \""
                + Quoted.shortly(bare)
                + "\"",
            wrong);
      }
    }
    try {
      return new Profile(
          name,
          whole(values, "lowest", source),
          whole(values, "highest", source),
          whole(values, "written_to_sounding", source),
          new Manner(
              values.getOrDefault("gate_db", Manner.ANYONE.gateDb()),
              values.getOrDefault("smoothing_cents", Manner.ANYONE.smoothingCents())));
    } catch (IllegalArgumentException wrong) {
      throw new UserMistake(source + ": " + wrong.getMessage() + "; mend that number", wrong);
    }
  }

  private static int whole(Map<String, Double> values, String key, String source) {
    Double value = values.get(key);
    if (value == null || value != Math.rint(value)) {
      throw new UserMistake(source + " needs a whole number for \"" + key + "\"");
    }
    return value.intValue();
  }

  /** How far over the room's noise a note must stand, in decibels. */
  public double gateDb() {
    return manner.gateDb();
  }

  /** Whether it is a voice: its pitches are less sure than an instrument's. */
  public boolean sings() {
    return name.endsWith("voice") || equals(ANYONE);
  }

  /** Lowest pitch to look for, in hertz, a little under the range. */
  public double lowestHz() {
    return Math.max(58, 440 * Math.pow(2, (lowest - MARGIN - 69) / 12.0));
  }

  /** Highest pitch to look for, in hertz, a little over the range. */
  public double highestHz() {
    return Math.min(4500, 440 * Math.pow(2, (highest + MARGIN - 69) / 12.0));
  }
}
