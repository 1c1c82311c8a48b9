package holdfast.listening.alignment;

/**
 * How seconds of the take follow from seconds of the backing: {@code take = start + stretch *
 * backing}.
 *
 * @param start the second of the take at which the backing's sound begins; may be negative
 * @param stretch how much longer a second of the backing lasts in the take; near 1
 */
record TimeLine(double start, double stretch) {

  double take(double backingSeconds) {
    return start + stretch * backingSeconds;
  }

  double backing(double takeSeconds) {
    return (takeSeconds - start) / stretch;
  }
}
