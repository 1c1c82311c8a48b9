package holdfast.motif;

/**
 * How a player who holds on to the idea skews it to a chord: a note that clashes goes to a
 * neighbour that fits, a note that fits mostly stays.
 *
 * <p>Shares of our own, from the worked adaptations that teachers accept: there nearly every note
 * that clashes moves, by a semitone more often than by two, and about one that fits in ten moves
 * too.
 */
final class Skew {

  /** A note that clashes stays all the same. */
  private static final double CLASH_STAYS = 0.2;

  /** A note that fits stays. */
  private static final double FIT_STAYS = 0.92;

  /** Where no chord is known, a note stays. */
  private static final double UNKNOWN_STAYS = 0.75;

  /** A move by a whole tone against one by a semitone. */
  private static final double TONE_TO_SEMITONE = 0.6;

  private Skew() {}

  /** Probability that a note meant for {@code place} is moved by {@code by} semitones. */
  static double share(int by, int place, Ground ground) {
    if (Math.abs(by) > 2) {
      return 0;
    }
    boolean known = ground.knowsChord();
    double stays = !known ? UNKNOWN_STAYS : ground.welcomes(place) ? FIT_STAYS : CLASH_STAYS;
    if (by == 0) {
      return stays;
    }
    if (!known) {
      // Only a chord can ask for a whole tone.
      return Math.abs(by) == 1 ? (1 - stays) / 2 : 0;
    }
    if (!ground.welcomes(place + by)) {
      return 0;
    }
    double sum = 0;
    for (int move = -2; move <= 2; move++) {
      if (move != 0 && ground.welcomes(place + move)) {
        sum += weight(move);
      }
    }
    return (1 - stays) * weight(by) / sum;
  }

  private static double weight(int move) {
    return Math.abs(move) == 1 ? 1 : TONE_TO_SEMITONE;
  }
}
