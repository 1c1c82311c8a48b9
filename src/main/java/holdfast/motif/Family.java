package holdfast.motif;

/** How near to the idea a phrase stands. */
public enum Family {
  /** A listener hears the idea again, in its place or moved, skewed at most to fit its chord. */
  RESTATED("restated"),
  /** A listener hears where it comes from, and that it was worked on. */
  VARIED("varied"),
  /** A listener hears something else. */
  NEW("new");

  private final String word;

  Family(String word) {
    this.word = word;
  }

  /** The word that people and JSON read. */
  public String word() {
    return word;
  }
}
