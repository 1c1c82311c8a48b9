package holdfast.motif;

/** How an idea goes on to the next chord, as listeners have learnt to expect. */
public enum CarryWay {
  /** The same notes, skewed where the chord asks for it. */
  SAME_NOTES("the same notes again"),
  /** Moved on along the scale as it moved before, else a step. */
  BY_STEP("another step along the scale"),
  /** Moved as far as the chord's root has moved. */
  WITH_THE_ROOT("moved with the chord's root");

  private final String words;

  CarryWay(String words) {
    this.words = words;
  }

  /** As it stands in a sentence: "a listener expected … ". */
  public String words() {
    return words;
  }
}
