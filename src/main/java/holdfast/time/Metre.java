package holdfast.time;

/**
 * A metre, as the fraction at the head of a chart.
 *
 * @param beats beats in a bar, 1 to 32
 * @param unit the note value that is one beat: 1, 2, 4, 8, 16 or 32 (4 is a quarter note)
 */
public record Metre(int beats, int unit) {

  /** Four quarter notes to the bar. */
  public static final Metre COMMON = new Metre(4, 4);

  /** Checks both numbers. */
  public Metre {
    if (beats < 1 || beats > 32) {
      throw new IllegalArgumentException("a metre has 1 to 32 beats in a bar, not " + beats);
    }
    if (Integer.bitCount(unit) != 1 || unit < 1 || unit > 32) {
      throw new IllegalArgumentException("a metre counts in 1, 2, 4, 8, 16 or 32, not " + unit);
    }
  }

  /** How many quarter notes last as long as one beat; MIDI files count in quarter notes. */
  public double quartersPerBeat() {
    return 4.0 / unit;
  }

  /** As written: {@code 4/4}. */
  public String text() {
    return beats + "/" + unit;
  }
}
