package holdfast.motif;

import java.util.Arrays;
import java.util.List;

/**
 * Which pitch each idea note should have at each place of the phrase, and how likely the played
 * pitches are then.
 */
final class PitchMap {

  private final Move move;
  private final int[] expected;
  private final double[] notes;
  private final int semitones;
  private final int steps;
  private final double logPrior;
  private double[] best = {};

  /**
   * @param move what becomes of the pitches
   * @param expected the pitch that idea note i should have where phrase note j stands, at i·m + j
   * @param notes ln probability of phrase note j's pitch for idea note i, at i·m + j
   * @param semitones how far the whole is moved, where it is moved as one
   * @param steps how many scale steps it is moved, where it moves by steps
   * @param logPrior ln probability of these parameters among all of the same move
   */
  PitchMap(Move move, int[] expected, double[] notes, int semitones, int steps, double logPrior) {
    this.move = move;
    this.expected = expected;
    this.notes = notes;
    this.semitones = semitones;
    this.steps = steps;
    this.logPrior = logPrior;
  }

  Move move() {
    return move;
  }

  int[] expected() {
    return expected;
  }

  double[] notes() {
    return notes;
  }

  /** The most of each phrase note's ln probabilities; {@code m} is how many phrase notes. */
  double[] best(int m) {
    if (best.length == 0) {
      best = Aligner.best(notes, m);
    }
    return best;
  }

  int semitones() {
    return semitones;
  }

  int steps() {
    return steps;
  }

  double logPrior() {
    return logPrior;
  }

  /** What becomes of the idea's pitches. */
  enum Move {
    LITERAL,
    TRANSPOSED,
    /** Along a scale or from scale to scale. */
    STEPS,
    /** Notes that clash moved onto notes that fit. */
    SKEWED
  }

  /** Whether one of the maps wants the same pitches everywhere. */
  boolean isIn(List<PitchMap> maps) {
    for (PitchMap other : maps) {
      if (Arrays.equals(expected, other.expected)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the map moves every note of {@code pitches} by one and the same interval. */
  boolean isRigid(int[] pitches, int m) {
    int by = expected[0] - pitches[0];
    for (int i = 0; i < pitches.length; i++) {
      for (int j = 0; j < m; j++) {
        if (expected[i * m + j] - pitches[i] != by) {
          return false;
        }
      }
    }
    return true;
  }
}
