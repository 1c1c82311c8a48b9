package holdfast.chart;

import holdfast.theory.Interval;
import holdfast.theory.Letter;
import holdfast.theory.NoteName;

/**
 * For whom a chart is written: the pitch that sounds when a player of it reads a C. A trumpet in B♭
 * reads a C and sounds a B♭, so its chart stands a major second higher than it sounds.
 *
 * @param pitch C for concert pitch; B♭, E♭ and F are the common transposing instruments
 */
public record WrittenFor(NoteName pitch) {

  private static final NoteName C = new NoteName(Letter.C, 0);

  /** As it sounds. */
  public static final WrittenFor CONCERT = new WrittenFor(C);

  /** Trumpet, clarinet, tenor and soprano saxophone. */
  public static final WrittenFor B_FLAT = new WrittenFor(new NoteName(Letter.B, -1));

  /** Alto and baritone saxophone. */
  public static final WrittenFor E_FLAT = new WrittenFor(new NoteName(Letter.E, -1));

  /** Horn. */
  public static final WrittenFor F = new WrittenFor(new NoteName(Letter.F, 0));

  /**
   * The way from what sounds to what is written, octaves left aside: up a major second for B♭, a
   * major sixth for E♭, a fifth for F.
   */
  public Interval fromSoundingToWritten() {
    return Interval.up(pitch, C);
  }

  /** Whether it reads what it sounds. */
  public boolean isConcert() {
    return pitch.equals(C);
  }
}
