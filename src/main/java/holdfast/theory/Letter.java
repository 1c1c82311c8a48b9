package holdfast.theory;

/** The seven letters of note names, in the order of the scale from C. */
public enum Letter {
  C(0, 0),
  D(1, 2),
  E(2, 4),
  F(3, 5),
  G(4, 7),
  A(5, 9),
  B(6, 11);

  private static final Letter[] IN_ORDER = values();

  private final int step;
  private final int pitchClass;

  Letter(int step, int pitchClass) {
    this.step = step;
    this.pitchClass = pitchClass;
  }

  /** The pitch class of the letter without accidental, C = 0. */
  public int pitchClass() {
    return pitchClass;
  }

  /** Its place in the scale from C, 0 to 6. */
  public int step() {
    return step;
  }

  /** The letter so many steps further up (down when negative), going round after B. */
  public Letter plus(int steps) {
    return IN_ORDER[Math.floorMod(step + steps, 7)];
  }
}
