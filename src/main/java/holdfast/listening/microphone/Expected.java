package holdfast.listening.microphone;

import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.Levels;
import java.util.OptionalDouble;

/**
 * What is known beforehand of a player and the way from the player to the ear.
 *
 * @param delaySeconds from a sound's reaching the microphone to its reaching the ear, as
 *     calibration measured it; taken off every time that is told
 * @param lowestHz lowest pitch that is looked for
 * @param highestHz highest pitch that is looked for
 * @param levels where voice and room stand
 * @param gateDb how far over the room a note must stand, in decibels; 0 where the room was never
 *     measured
 * @param tuningCents how far the player stood above A = 440 Hz the last time, if that was measured
 */
public record Expected(
    double delaySeconds,
    double lowestHz,
    double highestHz,
    Levels levels,
    double gateDb,
    OptionalDouble tuningCents) {

  /** Anyone, through devices that were never measured. */
  public static final Expected ANYONE =
      new Expected(0, Ear.LOWEST_HZ, Ear.HIGHEST_HZ, Levels.UNKNOWN, 0, OptionalDouble.empty());

  /** The same, between these pitches. */
  public Expected between(double lowest, double highest) {
    return new Expected(delaySeconds, lowest, highest, levels, gateDb, tuningCents);
  }

  /** The same, through devices that take so long. */
  public Expected late(double seconds) {
    return new Expected(seconds, lowestHz, highestHz, levels, gateDb, tuningCents);
  }

  /** The same, in a measured room, over which notes stand by so many decibels. */
  public Expected in(Levels measured, double gate) {
    return new Expected(delaySeconds, lowestHz, highestHz, measured, gate, tuningCents);
  }

  /** The same, from a player so tuned. */
  public Expected tuned(double cents) {
    return new Expected(
        delaySeconds, lowestHz, highestHz, levels, gateDb, OptionalDouble.of(cents));
  }
}
