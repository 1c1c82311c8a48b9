package holdfast.practice.invent;

/** What an idea may wear and still be the same idea. */
public enum Clothes {
  /** Nothing: note for note. */
  NONE("just as it was"),
  /** Another place, higher. */
  HIGHER("moved up"),
  /** Another place, lower. */
  LOWER("moved down"),
  /** The same place, skewed. */
  SKEWED("with a note or two moved"),
  /** One octave up, or more. */
  OCTAVE_UP("in a higher octave"),
  /** One octave down, or more. */
  OCTAVE_DOWN("in a lower octave"),
  /** Stretched. */
  SLOWER("slower"),
  /** Shortened. */
  FASTER("faster"),
  /** One note more, seldom two. */
  ADDED("with something added"),
  /** One note less, seldom two. */
  LEFT_OUT("with something left out");

  private final String words;

  Clothes(String words) {
    this.words = words;
  }

  /** As in a sentence: {@code Number 3 is number 1 again, in a higher octave}. */
  public String words() {
    return words;
  }

  /** What the older idea wears where this is what the newer one wears. */
  Clothes reversed() {
    return switch (this) {
      case HIGHER -> LOWER;
      case LOWER -> HIGHER;
      case OCTAVE_UP -> OCTAVE_DOWN;
      case OCTAVE_DOWN -> OCTAVE_UP;
      case SLOWER -> FASTER;
      case FASTER -> SLOWER;
      case ADDED -> LEFT_OUT;
      case LEFT_OUT -> ADDED;
      case NONE, SKEWED -> this;
    };
  }
}
