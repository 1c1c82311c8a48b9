package holdfast.listening.pitch;

import java.util.List;

/**
 * The player's own tuning: how far, in cents, all that is sung stands above or below A = 440 Hz. It
 * is followed from note to note, since voices drift; a restatement that is 40 cents flat throughout
 * is then still on its pitches.
 *
 * <p>A one-dimensional Kalman filter over the distance of each note from the nearest semitone of
 * the tuning so far. The spread of single notes is that of untrained singers (about 25 cents:
 * Pfordresher and Brown 2007 call within 50 cents accurate); the drift is a few cents a note.
 */
public final class Tuning {

  /** Standard deviation of a single short note round the singer's tuning, in cents. */
  private static final double NOTE_SPREAD = 25;

  /** Standard deviation of the drift from one note to the next, in cents. */
  private static final double DRIFT = 2.5;

  /** Standard deviation of a player's tuning before anything is heard, in cents. */
  private static final double FIRST_SPREAD = 15;

  /** A tuning is told apart from the next semitone only within these, in cents. */
  private static final double FARTHEST = 80;

  private double cents;
  private double variance;
  private double first;
  private boolean heard;

  private Tuning(double cents, double variance) {
    this.cents = cents;
    this.variance = variance;
    this.first = cents;
  }

  /** Nothing is known: A = 440 Hz until notes say otherwise. */
  public static Tuning unknown() {
    return new Tuning(0, FIRST_SPREAD * FIRST_SPREAD);
  }

  /** Known from a calibration, or from having heard the whole take before. */
  public static Tuning of(double cents) {
    return new Tuning(clamp(cents), NOTE_SPREAD);
  }

  /**
   * The tuning that fits a row of notes best: the mean direction of their distances from the
   * semitones, taken as angles, each weighted by its length.
   *
   * @param notes pitch in cents and length in seconds of each
   */
  public static Tuning fitting(List<double[]> notes) {
    double x = 0;
    double y = 0;
    double weight = 0;
    for (double[] note : notes) {
      double angle = 2 * Math.PI * note[0] / 100;
      double length = Math.min(1, note[1]);
      x += length * Math.cos(angle);
      y += length * Math.sin(angle);
      weight += length;
    }
    // Notes all over the place say nothing about a tuning.
    if (weight == 0 || Math.hypot(x, y) < 0.3 * weight) {
      return unknown();
    }
    return of(100 * Math.atan2(y, x) / (2 * Math.PI));
  }

  /** The nearest MIDI note number of a pitch in cents, 0 to 127, as this player is tuned. */
  public int pitch(double noteCents) {
    return (int) Math.max(0, Math.min(127, Math.rint((noteCents - cents) / 100)));
  }

  /** Hears one note. */
  public void hear(double noteCents, double seconds) {
    variance += DRIFT * DRIFT;
    double nearest = 100 * Math.rint((noteCents - cents) / 100);
    double off = noteCents - cents - nearest;
    double spread = NOTE_SPREAD * NOTE_SPREAD / Math.max(0.2, Math.min(2, seconds / 0.4));
    double gain = variance / (variance + spread);
    cents = clamp(cents + gain * off);
    variance *= 1 - gain;
    if (!heard) {
      first = cents;
      heard = true;
    }
  }

  private static double clamp(double cents) {
    return Math.max(-FARTHEST, Math.min(FARTHEST, cents));
  }

  /** How far the player stands above A = 440 Hz now, in cents; negative: flat. */
  public double cents() {
    return cents;
  }

  /** How far the player has moved since the first note, in cents; negative: sunk. */
  public double drift() {
    return cents - first;
  }

  /** The player's A4 in hertz. */
  public double a4Hz() {
    return Frames.hertz(6900 + cents);
  }
}
