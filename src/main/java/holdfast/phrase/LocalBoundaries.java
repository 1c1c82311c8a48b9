package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.List;

/**
 * How strongly does a listener feel a boundary between two notes, from what is on the surface
 * alone?
 *
 * <p>The Local Boundary Detection Model (E. Cambouropoulos, "The Local Boundary Detection Model
 * (LBDM) and its application in the study of expressive timing", ICMC 2001): where an interval is
 * large and differs from the intervals beside it, there is a boundary. Between two intervals the
 * degree of change is r(x, y) = |x − y| / (x + y), 0 where both are 0; the strength of interval i
 * is x(i) · (r(i−1, i) + r(i, i+1)), a missing neighbour adding nothing. The strengths of each
 * profile are divided by its largest, and added with the weights .25 for pitch intervals, .50 for
 * inter-onset intervals and .25 for rests.
 */
public final class LocalBoundaries {

  /** Weight of pitch intervals, in semitones. */
  public static final double PITCH_WEIGHT = 0.25;

  /** Weight of inter-onset intervals. */
  public static final double IOI_WEIGHT = 0.50;

  /** Weight of rests, from note-off to note-on. */
  public static final double REST_WEIGHT = 0.25;

  private LocalBoundaries() {}

  /**
   * The strength, 0 to 1, of the boundary after each note but the last.
   *
   * @param notes in order of onset
   */
  public static double[] strengths(List<PlayedNote> notes) {
    int n = Math.max(0, notes.size() - 1);
    double[] pitch = new double[n];
    double[] ioi = new double[n];
    double[] rest = new double[n];
    for (int i = 0; i < n; i++) {
      PlayedNote note = notes.get(i);
      PlayedNote next = notes.get(i + 1);
      pitch[i] = Math.abs(next.pitch() - note.pitch());
      ioi[i] = next.onsetSeconds() - note.onsetSeconds();
      rest[i] = Math.max(0, next.onsetSeconds() - note.endSeconds());
    }
    double[] p = profile(pitch);
    double[] t = profile(ioi);
    double[] r = profile(rest);
    double[] strengths = new double[n];
    for (int i = 0; i < n; i++) {
      strengths[i] = PITCH_WEIGHT * p[i] + IOI_WEIGHT * t[i] + REST_WEIGHT * r[i];
    }
    return strengths;
  }

  /** The strengths of one profile, the largest being 1; all 0 where nothing changes. */
  static double[] profile(double[] intervals) {
    int n = intervals.length;
    double[] strengths = new double[n];
    double largest = 0;
    for (int i = 0; i < n; i++) {
      double before = i > 0 ? change(intervals[i - 1], intervals[i]) : 0;
      double after = i + 1 < n ? change(intervals[i], intervals[i + 1]) : 0;
      strengths[i] = intervals[i] * (before + after);
      largest = Math.max(largest, strengths[i]);
    }
    for (int i = 0; i < n && largest > 0; i++) {
      strengths[i] /= largest;
    }
    return strengths;
  }

  /** The degree of change between two intervals, 0 to 1. */
  static double change(double x, double y) {
    return x + y == 0 ? 0 : Math.abs(x - y) / (x + y);
  }
}
