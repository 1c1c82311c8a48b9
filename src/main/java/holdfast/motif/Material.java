package holdfast.motif;

/** What a phrase is made of when it is not the idea. */
public enum Material {
  /** Neighbouring scale notes in one direction. */
  SCALE_RUN("a scale run", 0.13),
  /** Neighbouring chord notes in one direction. */
  ARPEGGIO("an arpeggio", 0.10),
  /** One pitch again and again. */
  REPEATED_NOTE("a repeated note", 0.04),
  /** Semitones in one direction. */
  CHROMATIC_LINE("a chromatic line", 0.03),
  /** A melody of its own. */
  MELODY("a new melodic idea", 0.70);

  private final String words;
  private final double share;

  Material(String words, double share) {
    this.words = words;
    this.share = share;
  }

  /** How often new material is of this kind. Common practice, no source. */
  double share() {
    return share;
  }

  /** As it stands in a sentence: "bars 5 to 8 were a scale run". */
  public String words() {
    return words;
  }
}
