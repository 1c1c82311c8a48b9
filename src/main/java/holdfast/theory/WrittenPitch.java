package holdfast.theory;

/**
 * What a transposing instrument reads. The transpositions are the trade's: a clarinet, a trumpet or
 * a tenor saxophone reads a tone (and octaves) above what sounds, an alto saxophone a sixth, a horn
 * in F a fifth.
 */
public enum WrittenPitch {
  CONCERT("C", 0, 0),
  B_FLAT("B♭", 1, 2),
  E_FLAT("E♭", 5, 9),
  F("F", 4, 7);

  private final String display;
  private final int letterSteps;
  private final int semitones;

  WrittenPitch(String display, int letterSteps, int semitones) {
    this.display = display;
    this.letterSteps = letterSteps;
    this.semitones = semitones;
  }

  /** As shown to people: {@code B♭}. */
  public String display() {
    return display;
  }

  /** How far above the sounding note the written one lies, octaves left aside. */
  public Interval aboveSounding() {
    return new Interval(letterSteps, semitones);
  }
}
