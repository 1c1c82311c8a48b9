package holdfast.listening.alignment;

/** The top of a peak between samples. */
final class Peak {

  private Peak() {}

  /** How far from the middle sample the top of the parabola through three samples lies, ±0.5. */
  static double offset(double before, double top, double after) {
    double bend = before - 2 * top + after;
    return bend >= 0 ? 0 : Math.max(-0.5, Math.min(0.5, 0.5 * (before - after) / bend));
  }
}
