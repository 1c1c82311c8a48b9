package holdfast.theory;

/**
 * A distance between two notes as musicians spell it: letter steps and semitones together, so that
 * up a minor third from E♭ is G♭ and not F♯.
 *
 * @param letterSteps steps from letter to letter, 2 for any third; negative downwards
 * @param semitones size in semitones, 3 for a minor third; negative downwards
 */
public record Interval(int letterSteps, int semitones) {

  /** Between a triple flat and a triple sharp lie six semitones more than the letters say. */
  private static final int MOST_ALTERATION = 6;

  public static final Interval UNISON = new Interval(0, 0);
  public static final Interval MINOR_SECOND = new Interval(1, 1);
  public static final Interval MAJOR_SECOND = new Interval(1, 2);
  public static final Interval MINOR_THIRD = new Interval(2, 3);
  public static final Interval MAJOR_THIRD = new Interval(2, 4);
  public static final Interval PERFECT_FOURTH = new Interval(3, 5);
  public static final Interval PERFECT_FIFTH = new Interval(4, 7);
  public static final Interval MINOR_SIXTH = new Interval(5, 8);
  public static final Interval MAJOR_SIXTH = new Interval(5, 9);
  public static final Interval MINOR_SEVENTH = new Interval(6, 10);
  public static final Interval MAJOR_SEVENTH = new Interval(6, 11);
  public static final Interval OCTAVE = new Interval(7, 12);

  /** Checks that letters and semitones tell of about the same distance. */
  public Interval {
    int octaves = Math.floorDiv(letterSteps, 7);
    int steps = Math.floorMod(letterSteps, 7);
    int plain = Letter.C.plus(steps).pitchClass() + 12 * octaves;
    if (Math.abs(semitones - plain) > MOST_ALTERATION) {
      throw new IllegalArgumentException(
          "no interval has " + letterSteps + " letter steps and " + semitones + " semitones");
    }
  }

  /** The way up from one name to the next such name, less than an octave. */
  public static Interval up(NoteName from, NoteName to) {
    int steps = Math.floorMod(to.letter().step() - from.letter().step(), 7);
    int semitones =
        Math.floorMod(to.letter().pitchClass() - from.letter().pitchClass(), 12)
            + to.alter()
            - from.alter();
    return new Interval(steps, semitones);
  }

  /** The same way back. */
  public Interval reversed() {
    return new Interval(-letterSteps, -semitones);
  }

  /** This interval and then another. */
  public Interval plus(Interval other) {
    return new Interval(letterSteps + other.letterSteps, semitones + other.semitones);
  }
}
