package holdfast.report.picture;

/** Where a staff puts its notes. */
public enum Clef {
  /** High voices and instruments. */
  TREBLE(0xE050, 2, 34),
  /** Low voices and instruments. */
  BASS(0xE062, 6, 22),
  /** Tenor voices and guitar: written an octave above what sounds. */
  TREBLE_OCTAVE_BELOW(0xE052, 2, 27);

  private final int sign;
  private final int line;
  private final int middle;

  /**
   * A clef.
   *
   * @param sign its code point in SMuFL
   * @param line where it sits, in half spaces above the lowest line
   * @param middle the letter that stands on the middle line, as steps from C0
   */
  Clef(int sign, int line, int middle) {
    this.sign = sign;
    this.line = line;
    this.middle = middle;
  }

  int sign() {
    return sign;
  }

  int line() {
    return line;
  }

  /** Steps above the lowest line of a letter that lies so many steps above C0. */
  int position(int step) {
    return step - middle + 4;
  }
}
