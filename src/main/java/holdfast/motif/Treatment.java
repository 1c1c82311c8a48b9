package holdfast.motif;

/**
 * What a player did with the idea, in the trade's words (Schoenberg, Fundamentals of Musical
 * Composition, ch. III; the words as theory glossaries give them).
 */
public enum Treatment {
  /** Same pitches, same rhythm, anywhere in the bar. */
  LITERAL("literal", Family.RESTATED),
  /** Every interval keeps its size in semitones (a real sequence), octaves included. */
  TRANSPOSED("transposed", Family.RESTATED),
  /** The same shape by scale steps, or the same notes skewed to fit the chord. */
  SEQUENCE("sequence", Family.RESTATED),
  /** Same rhythm, other pitches. */
  RHYTHM_KEPT("rhythm kept", Family.VARIED),
  /** Same ups and downs, other sizes; the idea itself when every note stays near its place. */
  CONTOUR_KEPT("contour kept", Family.VARIED),
  /** Ups become downs, about any axis, by semitones or by scale steps. */
  INVERTED("inverted", Family.VARIED),
  /** Pitches in reversed order; the rhythm kept or reversed too. */
  RETROGRADE("retrograde", Family.VARIED),
  /** All times stretched by one factor above 1. */
  AUGMENTED("augmented", Family.VARIED),
  /** All times shrunk by one factor below 1. */
  DIMINISHED("diminished", Family.VARIED),
  /** A contiguous part of the idea, once or several times. */
  FRAGMENT("fragment", Family.VARIED),
  /** The whole idea with notes added in front of it or after it. */
  EXTENDED("extended", Family.VARIED),
  /** The whole idea with short notes put in between. */
  ORNAMENTED("ornamented", Family.VARIED),
  /** Not the idea: new material. */
  NEW("new", Family.NEW);

  private final String word;
  private final Family family;

  Treatment(String word, Family family) {
    this.word = word;
    this.family = family;
  }

  /** The word that people and JSON read. */
  public String word() {
    return word;
  }

  /**
   * The family that the treatment belongs to as a rule. A contour that is kept with every note near
   * its place is the idea restated: see {@link Verdict#family()}.
   */
  public Family family() {
    return family;
  }
}
