package holdfast.motif;

/**
 * How much of the idea's own features a phrase shows, feature by feature, best alignment taken. A
 * note that was left out or put in counts as a disagreement.
 *
 * @param rhythm agreement of the times between onsets, once one common stretch is taken out; 0 to 1
 * @param contour share of ups, downs and repeated notes that agree; 0 to 1
 * @param intervals agreement of interval sizes, a miss of one semitone costing a third; 0 to 1
 */
public record Evidence(double rhythm, double contour, double intervals) {

  /** Checks that each share lies between 0 and 1. */
  public Evidence {
    check("rhythm", rhythm);
    check("contour", contour);
    check("intervals", intervals);
  }

  private static void check(String name, double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException(name + " evidence must be 0 to 1, not " + share);
    }
  }
}
