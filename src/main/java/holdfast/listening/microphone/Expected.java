package holdfast.listening.microphone;

import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.Levels;
import holdfast.listening.pitch.Manner;
import java.util.OptionalDouble;

/**
 * What is known beforehand of a player and the way from the player to the ear.
 *
 * @param delaySeconds from a sound's reaching the microphone to its reaching the ear, as
 *     calibration measured it; taken off every time that is told
 * @param lowestHz lowest pitch that is looked for
 * @param highestHz highest pitch that is looked for
 * @param levels where voice and room stand
 * @param manner how far over the room a note must stand, in decibels, and which shakes are one note
 * @param roomMeasured whether the room in {@code levels} was measured; else it is listened for
 * @param tuningCents how far the player stood above A = 440 Hz the last time, if that was measured
 */
public record Expected(
    double delaySeconds,
    double lowestHz,
    double highestHz,
    Levels levels,
    Manner manner,
    boolean roomMeasured,
    OptionalDouble tuningCents) {

  /** Anyone, through devices that were never measured. */
  public static final Expected ANYONE =
      new Expected(
          0,
          Ear.LOWEST_HZ,
          Ear.HIGHEST_HZ,
          Levels.UNKNOWN,
          Manner.ANYONE,
          false,
          OptionalDouble.empty());

  /** The same, between these pitches. */
  public Expected between(double lowest, double highest) {
    return new Expected(delaySeconds, lowest, highest, levels, manner, roomMeasured, tuningCents);
  }

  /** The same, through devices that take so long. */
  public Expected late(double seconds) {
    return new Expected(seconds, lowestHz, highestHz, levels, manner, roomMeasured, tuningCents);
  }

  /** The same, in a measured room. */
  public Expected in(Levels measured) {
    return new Expected(delaySeconds, lowestHz, highestHz, measured, manner, true, tuningCents);
  }

  /** The same, from someone who plays like this. */
  public Expected like(Manner known) {
    return new Expected(
        delaySeconds, lowestHz, highestHz, levels, known, roomMeasured, tuningCents);
  }

  /** The same, from a player so tuned. */
  public Expected tuned(double cents) {
    return new Expected(
        delaySeconds, lowestHz, highestHz, levels, manner, roomMeasured, OptionalDouble.of(cents));
  }
}
