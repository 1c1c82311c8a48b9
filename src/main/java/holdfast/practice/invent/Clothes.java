package holdfast.practice.invent;

/** What an idea may wear and still be the same idea. */
public enum Clothes {
  /** Nothing: note for note. */
  NONE("as it was"),
  /** Another place. */
  MOVED("on other notes"),
  /** Another octave. */
  OCTAVE("in another octave"),
  /** Slower or faster. */
  PACE("slower or faster"),
  /** One note more or less. */
  ORNAMENT("with one note more or less");

  private final String words;

  Clothes(String words) {
    this.words = words;
  }

  /** As in a sentence: {@code It is your first idea again, in another octave}. */
  public String words() {
    return words;
  }
}
