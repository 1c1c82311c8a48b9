package holdfast.report.picture;

/** The five lines, in staff spaces; thicknesses as Bravura's metadata wants them. */
final class Lines {

  /** The middle line, in half spaces above the lowest. */
  static final int MIDDLE = 4;

  /** The top line. */
  static final int TOP = 8;

  static final double THICKNESS = 0.13;
  static final double STEM_THICKNESS = 0.12;
  static final double BEAM_THICKNESS = 0.5;
  static final double BEAM_STEP = 0.75;
  static final double LEDGER_THICKNESS = 0.16;
  static final double LEDGER_EXTENSION = 0.4;
  static final double BAR_LINE_THICKNESS = 0.16;

  private Lines() {}

  /** Spaces below the top line of a place in half spaces above the lowest line. */
  static double y(int position) {
    return (TOP - position) / 2.0;
  }
}
