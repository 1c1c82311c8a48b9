package holdfast.bench.listening;

import java.util.Arrays;
import java.util.List;

/**
 * How well heard notes match the true ones, by mir_eval's transcription metrics: a note is right
 * when its onset is within 50 ms and its pitch within 50 cents (and, with offsets, its end within
 * 20 % of the true length or 50 ms, whichever is more). Each true note is matched once at most, by
 * a matching of greatest size.
 *
 * @param precision share of the heard notes that are right
 * @param recall share of the true notes that were heard
 * @param f1 harmonic mean of the two
 */
public record NoteScore(double precision, double recall, double f1) {

  private static final double ONSET_SECONDS = 0.05;
  private static final double PITCH_CENTS = 50;
  private static final double OFFSET_SHARE = 0.2;
  private static final double OFFSET_SECONDS = 0.05;

  /** mir_eval rounds distances to four decimals, so that 0.05 s is within 0.05 s. */
  private static final double ROUNDING = 1e4;

  /** Scores onsets and pitches. */
  public static NoteScore withoutOffsets(List<TrueNote> truth, List<TrueNote> heard) {
    return of(truth, heard, false);
  }

  /** Scores onsets, pitches and ends. */
  public static NoteScore withOffsets(List<TrueNote> truth, List<TrueNote> heard) {
    return of(truth, heard, true);
  }

  private static NoteScore of(List<TrueNote> truth, List<TrueNote> heard, boolean offsets) {
    int hits = matched(truth, heard, offsets);
    double precision = heard.isEmpty() ? 0 : (double) hits / heard.size();
    double recall = truth.isEmpty() ? 0 : (double) hits / truth.size();
    double f1 = hits == 0 ? 0 : 2 * precision * recall / (precision + recall);
    return new NoteScore(precision, recall, f1);
  }

  /** The size of the largest matching: Kuhn's augmenting paths. */
  static int matched(List<TrueNote> truth, List<TrueNote> heard, boolean offsets) {
    int[] ownerOfHeard = new int[heard.size()];
    Arrays.fill(ownerOfHeard, -1);
    int size = 0;
    for (int t = 0; t < truth.size(); t++) {
      if (augment(t, truth, heard, offsets, ownerOfHeard, new boolean[heard.size()])) {
        size++;
      }
    }
    return size;
  }

  private static boolean augment(
      int t,
      List<TrueNote> truth,
      List<TrueNote> heard,
      boolean offsets,
      int[] ownerOfHeard,
      boolean[] tried) {
    for (int h = 0; h < heard.size(); h++) {
      if (!tried[h] && fits(truth.get(t), heard.get(h), offsets)) {
        tried[h] = true;
        if (ownerOfHeard[h] < 0
            || augment(ownerOfHeard[h], truth, heard, offsets, ownerOfHeard, tried)) {
          ownerOfHeard[h] = t;
          return true;
        }
      }
    }
    return false;
  }

  private static boolean fits(TrueNote truth, TrueNote heard, boolean offsets) {
    double length = truth.offsetSeconds() - truth.onsetSeconds();
    return distance(truth.onsetSeconds(), heard.onsetSeconds()) <= ONSET_SECONDS
        && Math.abs(1200 * Math.log(heard.hz() / truth.hz()) / Math.log(2)) <= PITCH_CENTS
        && (!offsets
            || distance(truth.offsetSeconds(), heard.offsetSeconds())
                <= Math.max(OFFSET_SHARE * length, OFFSET_SECONDS));
  }

  private static double distance(double a, double b) {
    return Math.rint(Math.abs(a - b) * ROUNDING) / ROUNDING;
  }
}
