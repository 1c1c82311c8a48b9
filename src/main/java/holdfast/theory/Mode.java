package holdfast.theory;

/** The seven modes and the two keys; the key of a chart is major, minor or one of the modes. */
public enum Mode {
  MAJOR("major", 0, 0, 2, 4, 5, 7, 9, 11),
  MINOR("minor", -3, 0, 2, 3, 5, 7, 8, 10),
  DORIAN("Dorian", -2, 0, 2, 3, 5, 7, 9, 10),
  PHRYGIAN("Phrygian", -4, 0, 1, 3, 5, 7, 8, 10),
  LYDIAN("Lydian", 1, 0, 2, 4, 6, 7, 9, 11),
  MIXOLYDIAN("Mixolydian", -1, 0, 2, 4, 5, 7, 9, 10),
  LOCRIAN("Locrian", -5, 0, 1, 3, 5, 6, 8, 10);

  private final String display;
  private final int fifthsFromMajor;
  private final int steps;

  Mode(String display, int fifthsFromMajor, int... steps) {
    this.display = display;
    this.fifthsFromMajor = fifthsFromMajor;
    this.steps = PitchClassSet.of(steps).mask();
  }

  /** As shown: {@code minor}, {@code Dorian}. */
  public String display() {
    return display;
  }

  /** Sharps more (flats when negative) than the major key on the same tonic. */
  int fifthsFromMajor() {
    return fifthsFromMajor;
  }

  /** Semitones of the scale above the tonic; natural minor for {@link #MINOR}. */
  public PitchClassSet steps() {
    return new PitchClassSet(steps);
  }

  /** Whether the third above the tonic is minor. */
  public boolean hasMinorThird() {
    return steps().contains(3);
  }
}
