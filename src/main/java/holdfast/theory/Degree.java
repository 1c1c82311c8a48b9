package holdfast.theory;

/**
 * A degree of a chord or scale, counted against the major scale of the root: {@code 3}, {@code b7},
 * {@code #11}.
 *
 * @param number 1 to 13
 * @param alter semitones against the major scale, -2 to 2
 */
public record Degree(int number, int alter) implements Comparable<Degree> {

  /** Checks both numbers. */
  public Degree {
    if (number < 1 || number > 13) {
      throw new IllegalArgumentException("a degree is 1 to 13, not " + number);
    }
    if (Math.abs(alter) > 2) {
      throw new IllegalArgumentException("a degree is altered by at most 2, not " + alter);
    }
  }

  /**
   * Reads {@code 5}, {@code b9}, {@code bb7}, {@code #11}.
   *
   * @throws IllegalArgumentException when the text is no degree
   */
  public static Degree parse(String text) {
    if (!text.matches("(b{0,2}|#{0,2})[0-9]{1,2}")) {
      throw new IllegalArgumentException("“" + text + "” is no degree; write 3, b7 or #11");
    }
    int accidentals = 0;
    while (!Character.isDigit(text.charAt(accidentals))) {
      accidentals++;
    }
    int alter = text.startsWith("b") ? -accidentals : accidentals;
    return new Degree(Integer.parseInt(text.substring(accidentals)), alter);
  }

  /** Semitones above the root, 0 to 23. */
  public int semitones() {
    int steps = number - 1;
    return Letter.C.plus(steps).pitchClass() + 12 * (steps / 7) + alter;
  }

  /** The way up from the root. */
  public Interval interval() {
    return new Interval(number - 1, semitones());
  }

  /** As typed: {@code b7}. */
  public String text() {
    return (alter < 0 ? "b" : "#").repeat(Math.abs(alter)) + number;
  }

  /** As shown to people: {@code ♭7}. */
  public String display() {
    return (alter < 0 ? "♭" : "♯").repeat(Math.abs(alter)) + number;
  }

  /** By number, then from flat to sharp. */
  @Override
  public int compareTo(Degree other) {
    return number != other.number
        ? Integer.compare(number, other.number)
        : Integer.compare(alter, other.alter);
  }
}
