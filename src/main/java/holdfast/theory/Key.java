package holdfast.theory;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The key of a chart: {@code Eb}, {@code Cm}, {@code Dm (Dorian)}.
 *
 * @param tonic the note that is home
 * @param mode major, minor or a mode
 */
public record Key(NoteName tonic, Mode mode) {

  private static final Pattern FORM =
      Pattern.compile(
          "(\\p{L}[b#♭♯]{0,2})\\s*(minor|min|m(?!\\p{L})|-|major|maj|)\\s*(?:\\(?(\\p{L}+)\\)?)?");

  /**
   * Reads {@code Eb}, {@code Cm}, {@code C minor}, {@code Dm (Dorian)}, {@code D Dorian}.
   *
   * @throws IllegalArgumentException when the text names no key
   */
  public static Key parse(String text) {
    Matcher form = FORM.matcher(text.strip());
    if (!form.matches() || NoteName.read(form.group(1)).isEmpty()) {
      throw unknown(text);
    }
    NoteName tonic = NoteName.parse(form.group(1));
    String third = form.group(2);
    boolean minor = third.startsWith("min") || third.equals("m") || third.equals("-");
    if (form.group(3) == null) {
      return new Key(tonic, minor ? Mode.MINOR : Mode.MAJOR);
    }
    Mode mode = mode(form.group(3), text);
    if ((minor && !mode.hasMinorThird()) || (third.startsWith("maj") && mode.hasMinorThird())) {
      throw unknown(text);
    }
    return new Key(tonic, mode);
  }

  private static Mode mode(String word, String text) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "major", "maj", "ionian" -> Mode.MAJOR;
      case "minor", "min", "aeolian" -> Mode.MINOR;
      case "dorian" -> Mode.DORIAN;
      case "phrygian" -> Mode.PHRYGIAN;
      case "lydian" -> Mode.LYDIAN;
      case "mixolydian" -> Mode.MIXOLYDIAN;
      case "locrian" -> Mode.LOCRIAN;
      default -> throw unknown(text);
    };
  }

  private static IllegalArgumentException unknown(String text) {
    return new IllegalArgumentException(
        "“"
            + text
            + "” is no key; write a note, m for minor, and a mode in parentheses if there is"
            + " one, as Eb, Cm or Dm (Dorian)");
  }

  /** Sharps (or, negative, flats) in the signature; beyond 7 either way no signature exists. */
  public int fifths() {
    int natural =
        switch (tonic.letter()) {
          case F -> -1;
          case C -> 0;
          case G -> 1;
          case D -> 2;
          case A -> 3;
          case E -> 4;
          case B -> 5;
        };
    return natural + 7 * tonic.alter() + mode.fifthsFromMajor();
  }

  /** The pitch classes of the key's scale; natural minor for a minor key. */
  public PitchClassSet scale() {
    return mode.steps().transpose(tonic.pitchClass());
  }

  /**
   * What a pitch class is called in this key: the scale's own name where it has one; else the
   * raised seventh, sixth and fourth with a sharp and the others as flats, as chords of the key use
   * them; never a double accidental.
   */
  public NoteName spell(int pitchClass) {
    return KeySpelling.name(this, pitchClass);
  }

  /**
   * The key an interval higher, on the tonic that has the smaller signature: from D up a minor
   * third is F; from B up a major second is D♭, not C♯. With six of either, flats for a tonic that
   * came from flats.
   */
  public Key transpose(Interval interval) {
    Key there = new Key(tonic.transpose(interval), mode);
    Key sharp = new Key(NoteName.plain(there.tonic.pitchClass(), true), mode);
    Key flat = new Key(NoteName.plain(there.tonic.pitchClass(), false), mode);
    Key easiest = there;
    for (Key candidate : List.of(sharp, flat)) {
      if (Math.abs(candidate.fifths()) < Math.abs(easiest.fifths())) {
        easiest = candidate;
      }
    }
    return easiest;
  }

  /** As typed: {@code Eb}, {@code Cm}, {@code Dm (Dorian)}; it reads back the same. */
  public String text() {
    return tonic.text() + ending();
  }

  /** As shown to people: {@code E♭}, {@code Cm}. */
  public String display() {
    return tonic.display() + ending();
  }

  private String ending() {
    return switch (mode) {
      case MAJOR -> "";
      case MINOR -> "m";
      default -> (mode.hasMinorThird() ? "m" : "") + " (" + mode.display() + ")";
    };
  }
}
