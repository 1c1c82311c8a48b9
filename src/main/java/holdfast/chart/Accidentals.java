package holdfast.chart;

import holdfast.theory.Letter;
import holdfast.theory.SpelledPitch;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Which accidentals have to be printed along a staff: those that neither the signature nor an
 * accidental before them in the bar says already. Common practice of engravers, no source.
 */
public final class Accidentals {

  /** The letters in the order in which a signature takes its sharps; flats come backwards. */
  public static final String SHARPS = "FCGDAEB";

  /** A line of the staff, as letter and octave: where an accidental holds until the bar line. */
  private record Line(Letter letter, int octave) {}

  private final int fifths;
  private final Map<Line, Integer> said = new HashMap<>();

  /**
   * A staff under a signature.
   *
   * @param fifths sharps of the signature, flats negative
   */
  public Accidentals(int fifths) {
    this.fifths = fifths;
  }

  /** A bar line ends what accidentals say. */
  public void startBar() {
    said.clear();
  }

  /** What has to be printed before this note, in semitones up (a sharp is 1); 0 is a natural. */
  public OptionalInt printed(SpelledPitch pitch) {
    Line line = new Line(pitch.name().letter(), pitch.octave());
    int alter = pitch.name().alter();
    int before = said.getOrDefault(line, signature(line.letter()));
    said.put(line, alter);
    return alter == before ? OptionalInt.empty() : OptionalInt.of(alter);
  }

  private int signature(Letter letter) {
    int place = SHARPS.indexOf(letter.name());
    return Math.floorDiv(fifths - place - 1, SHARPS.length()) + 1;
  }
}
