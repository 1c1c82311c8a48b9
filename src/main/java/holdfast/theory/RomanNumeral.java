package holdfast.theory;

import java.util.List;

/** Roots as musicians count them above the tonic: {@code I}, {@code bII}, {@code #IV}. */
final class RomanNumeral {

  private static final List<String> NUMERALS = List.of("I", "II", "III", "IV", "V", "VI", "VII");

  private RomanNumeral() {}

  /** Semitones above the tonic, counted against its major scale. */
  static int semitones(String text) {
    int accidentals = 0;
    while (accidentals < text.length() && "b#".indexOf(text.charAt(accidentals)) >= 0) {
      accidentals++;
    }
    int degree = NUMERALS.indexOf(text.substring(accidentals)) + 1;
    if (degree == 0) {
      throw new IllegalArgumentException("“" + text + "” is no degree; write IV or bVI");
    }
    int alter = text.startsWith("b") ? -accidentals : accidentals;
    return Math.floorMod(new Degree(degree, alter).semitones(), 12);
  }
}
