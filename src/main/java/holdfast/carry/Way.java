package holdfast.carry;

/** How an idea gets from one chord to the next. */
public enum Way {
  /** Note for note the same. */
  LITERAL("literal"),
  /** Some notes move so that they fit. */
  SKEWED("skewed to the chord"),
  /** The whole idea moves by a step of the scale. */
  SEQUENCE("sequence"),
  /** The whole idea moves by one interval. */
  TRANSPOSED("transposed");

  private final String text;

  Way(String text) {
    this.text = text;
  }

  /** As written in answers. */
  public String text() {
    return text;
  }
}
