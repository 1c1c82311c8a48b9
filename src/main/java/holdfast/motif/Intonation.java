package holdfast.motif;

import java.util.Arrays;

/**
 * How likely is a note where another was meant? A keyboard's is right, or a neighbour. A voice's
 * lies about the note that was meant, normally distributed; where the idea was sung too, its own
 * notes lay about what was meant as well, and the variances add. Where only the nearest key of a
 * sung note is known, so is only the chance that it is another one.
 */
final class Intonation {

  private static final double SEMITONE = 100;

  /** So far or farther, in semitones, all is equally unlikely. */
  private static final int FAR = 3;

  /** Wild notes lie anywhere within an octave. */
  private static final double ANYWHERE = 24;

  private final double[] slip = new double[FAR + 1];
  private final double[] wrong = new double[FAR + 1];
  private final double top;
  private final double width;
  private final boolean tuned;

  /**
   * @param spreading the variance of a note against the idea, over that against what is written
   */
  Intonation(Player player, double spreading, boolean tuned) {
    double semitone = player.semitoneSlip() * spreading;
    double tone = player.toneSlip() * spreading;
    double wild = player.wildSlip() * spreading;
    Arrays.fill(slip, Math.log(wild / ANYWHERE));
    Arrays.fill(wrong, wild / ANYWHERE);
    slip[0] = Math.log(1 - semitone - tone - wild);
    slip[1] = Math.log(semitone / 2);
    slip[2] = Math.log(tone / 2);
    wrong[1] += tone / 2;
    wrong[2] += tone / 2;
    double sd = player.spreadCents() * Math.sqrt(spreading);
    this.tuned = tuned && sd > 0;
    this.top = this.tuned ? (1 - 2 * tone - wild) * SEMITONE / (sd * Math.sqrt(2 * Math.PI)) : 0;
    this.width = 2 * sd * sd;
  }

  /**
   * ln probability, a semitone, of a note {@code off} semitones above the one that was meant.
   *
   * @param beside how much farther it lay above its own key than the idea's note did, in cents
   */
  double log(int off, double beside) {
    int size = Math.min(FAR, Math.abs(off));
    if (!tuned) {
      return slip[size];
    }
    double cents = SEMITONE * off + beside;
    return Math.log(top * Math.exp(-cents * cents / width) + wrong[size]);
  }

  /** The same distance in whole semitones, as an ear that knows the idea would call it. */
  static int semitones(int off, double beside) {
    return (int) Math.rint(off + beside / SEMITONE);
  }
}
