package holdfast.backing;

/**
 * Which bar of which chorus is played.
 *
 * @param chorus from 1; a loop that is played again and again stays in its chorus
 * @param bar the bar of the form, from 1; 0 is the pick-up
 */
public record BarPlace(int chorus, int bar) {

  /** Checks that both count. */
  public BarPlace {
    if (chorus < 1 || bar < 0) {
      throw new IllegalArgumentException("no bar " + bar + " of chorus " + chorus);
    }
  }
}
