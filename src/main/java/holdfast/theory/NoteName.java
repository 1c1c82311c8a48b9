package holdfast.theory;

import java.util.Optional;

/**
 * A note's name without its octave: a letter and its accidental, as {@code Eb} or {@code F#}.
 *
 * @param letter the letter
 * @param alter semitones by which the accidental raises it: -1 is a flat, 1 a sharp; -3 to 3, since
 *     the degrees of a rare key can need a triple one
 */
public record NoteName(Letter letter, int alter) {

  private static final int MOST_ACCIDENTALS = 3;

  /** Checks the accidental. */
  public NoteName {
    if (Math.abs(alter) > MOST_ACCIDENTALS) {
      throw new IllegalArgumentException("a note name has at most three accidentals, not " + alter);
    }
  }

  /**
   * Reads {@code C}, {@code Eb}, {@code F#}, {@code Bbb}, {@code G♭}; the letter may be small.
   *
   * @throws IllegalArgumentException when the text is no note name
   */
  public static NoteName parse(String text) {
    return read(text)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "“" + text + "” is no note name; write a letter A to G, then b or #"));
  }

  /** As {@link #parse}, but empty when the text is no note name. */
  public static Optional<NoteName> read(String text) {
    int end = endOf(text);
    return end > 0 && end == text.length() ? Optional.of(head(text, end)) : Optional.empty();
  }

  /** Where the note name at the start of the text ends; 0 when there is none. */
  static int endOf(String text) {
    if (text.isEmpty() || "ABCDEFGabcdefg".indexOf(text.charAt(0)) < 0) {
      return 0;
    }
    int end = 1;
    while (end < text.length() && end <= MOST_ACCIDENTALS && isAccidental(text, end)) {
      end++;
    }
    return end;
  }

  /** The note name that the first so many characters spell. */
  static NoteName head(String text, int end) {
    Letter letter = Letter.valueOf(String.valueOf(Character.toUpperCase(text.charAt(0))));
    int alter = 0;
    for (int i = 1; i < end; i++) {
      alter += accidental(text.charAt(i));
    }
    return new NoteName(letter, alter);
  }

  private static boolean isAccidental(String text, int i) {
    // "b" and "#" are not mixed in one name: B#b5 is no note.
    int value = accidental(text.charAt(i));
    return value != 0 && (i == 1 || accidental(text.charAt(i - 1)) == value);
  }

  private static int accidental(char c) {
    return switch (c) {
      case 'b', '♭' -> -1;
      case '#', '♯' -> 1;
      default -> 0;
    };
  }

  /** Its pitch class, C = 0. */
  public int pitchClass() {
    return Math.floorMod(letter.pitchClass() + alter, 12);
  }

  /** The name an interval higher, spelled by letter steps; simplified past a double accidental. */
  public NoteName transpose(Interval interval) {
    Letter there = letter.plus(interval.letterSteps());
    int natural = there.pitchClass() - letter.pitchClass();
    int wanted = interval.semitones() + alter;
    // The accidental is what is left, within half an octave either way.
    int alterThere = Math.floorMod(wanted - natural + 6, 12) - 6;
    return Math.abs(alterThere) <= MOST_ACCIDENTALS
        ? new NoteName(there, alterThere)
        : plain(pitchClass() + interval.semitones(), alterThere > 0);
  }

  /**
   * The same sound with at most one accidental: {@code Bbb} becomes {@code A}, {@code F##} becomes
   * {@code G}; a name with one or none is left as it is.
   */
  public NoteName simplified() {
    return Math.abs(alter) <= 1 ? this : plain(pitchClass(), alter > 0);
  }

  /** The simplest name of a pitch class: its letter, or a sharp or a flat as asked. */
  public static NoteName plain(int pitchClass, boolean sharp) {
    int wanted = Math.floorMod(pitchClass, 12);
    for (Letter letter : Letter.values()) {
      if (letter.pitchClass() == wanted) {
        return new NoteName(letter, 0);
      }
    }
    int alter = sharp ? 1 : -1;
    for (Letter letter : Letter.values()) {
      if (letter.pitchClass() + alter == wanted) {
        return new NoteName(letter, alter);
      }
    }
    throw new AssertionError("every pitch class has a name: " + wanted);
  }

  /** As typed: {@code Eb}, {@code F#}. */
  public String text() {
    return letter + (alter < 0 ? "b" : "#").repeat(Math.abs(alter));
  }

  /** As shown to people: {@code E♭}, {@code F♯}. */
  public String display() {
    return letter + (alter < 0 ? "♭" : "♯").repeat(Math.abs(alter));
  }
}
