package holdfast.time;

/**
 * Which second of the take is a moment on the machine's clock? While a backing plays, second 0 is
 * its first beat as it is heard, so that a beat's place in the music and in the take stay one.
 */
@FunctionalInterface
public interface TakeClock {

  /**
   * The second of the take.
   *
   * @param nanoTime a moment of {@link System#nanoTime}
   */
  double secondsAt(long nanoTime);

  /** A take that starts at this moment and runs with the machine's clock. */
  static TakeClock from(long secondZeroNanos) {
    return nanoTime -> (nanoTime - secondZeroNanos) * 1e-9;
  }
}
