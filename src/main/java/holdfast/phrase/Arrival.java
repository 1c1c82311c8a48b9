package holdfast.phrase;

/**
 * When does a note come that is due? About its time, as human timing goes; or, now and then, late,
 * because the player hesitates.
 *
 * <p>Both arguments count from the same earlier note: how long it has been waited for, and after
 * how long it was due, in seconds.
 */
final class Arrival {

  /**
   * An onset is off its place by so much. Keyboard players keep within 20 ms, what a microphone
   * hears of singers within 45 ms (the project's assumptions, the same as in its made takes).
   */
  private static final double TIMING_SECONDS = 0.045;

  /** And by this part of the way, since nobody's tempo is that of the clock. */
  private static final double TIMING_PART = 0.07;

  private static final double HESITATES = 0.08;

  /** Mean length of a hesitation, beyond the time the note was due. */
  private static final double HESITATION_SECONDS = 0.35;

  private Arrival() {}

  /** Spread about the due time. */
  static double timing(double due) {
    return Math.hypot(TIMING_SECONDS, TIMING_PART * due);
  }

  /** Density of its coming now. */
  static double now(double waited, double due) {
    double late = waited - due;
    double hesitant = late > 0 ? Math.exp(-late / HESITATION_SECONDS) / HESITATION_SECONDS : 0;
    return (1 - HESITATES) * Spread.normal(waited, due, timing(due)) + HESITATES * hesitant;
  }

  /** Chance that it is still to come. */
  static double later(double waited, double due) {
    double late = waited - due;
    double hesitant = late > 0 ? Math.exp(-late / HESITATION_SECONDS) : 1;
    return (1 - HESITATES) * Spread.normalAbove(waited, due, timing(due)) + HESITATES * hesitant;
  }
}
