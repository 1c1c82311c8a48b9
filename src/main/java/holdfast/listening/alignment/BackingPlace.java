package holdfast.listening.alignment;

import java.util.OptionalInt;

/**
 * Where the backing lies in a take.
 *
 * @param barOneSeconds the second of the take at which bar 1 begins; negative where the recording
 *     was begun later
 * @param stretch how much longer a second of the backing, as it is written, lasts in the take
 * @param tempoRatio how many times the written tempo the backing was played at; 1 unless its pitch
 *     stayed while its speed did not
 * @param clockStretch what is left of the stretch then: the clock of the recorder
 * @param sureness how sure it is
 * @param ourSound whether it is our own rendered sound, so that it can be taken out of the take
 * @param rounds after how many choruses it stops in the take; empty where it sounds to the take's
 *     end, or is not our own sound
 * @param clearness how far the place stands out of other places, for whoever measures this
 */
public record BackingPlace(
    double barOneSeconds,
    double stretch,
    double tempoRatio,
    double clockStretch,
    Sureness sureness,
    boolean ourSound,
    OptionalInt rounds,
    double clearness) {

  /** How sure. */
  public enum Sureness {
    /** No other place comes near. */
    SURE,
    /** Others are less likely, but not out of the question. */
    LIKELY,
    /** As good as a guess. */
    UNSURE
  }

  /** The second of the take for a second of the written backing after its bar 1. */
  public double takeSeconds(double secondsAfterBarOne) {
    return barOneSeconds + stretch * secondsAfterBarOne;
  }
}
