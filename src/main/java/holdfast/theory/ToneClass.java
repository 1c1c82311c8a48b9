package holdfast.theory;

/** What a note is against a chord, from home to strange. */
public enum ToneClass {
  /** It belongs to the chord. */
  CHORD_TONE("CT"),
  /** It colours the chord and can be held. */
  TENSION("T"),
  /** It belongs to a scale of the chord and would rather move on. */
  SCALE_TONE("S"),
  /** Neither chord nor scale has it: it leads somewhere, or it clashes. */
  OUTSIDE("X");

  private final String sign;

  ToneClass(String sign) {
    this.sign = sign;
  }

  /** The short sign of tables: CT, T, S or X. */
  public String sign() {
    return sign;
  }
}
