package holdfast.theory;

import java.util.Locale;

/**
 * One {@code <degree>} of a MusicXML 4.0 {@code <harmony>}: what is added to, altered in or taken
 * from the chord that its kind names.
 *
 * @param type what is done
 * @param value the degree number, 1 to 13
 * @param alter semitones; for {@link Type#ADD} against a dominant chord on the root (so that an
 *     added 7 with alter 0 is the flat seventh), for {@link Type#ALTER} against the note that the
 *     kind has there; without meaning, 0, for {@link Type#SUBTRACT}
 */
public record DegreeChange(Type type, int value, int alter) {

  /** The three degree types of MusicXML. */
  public enum Type {
    ADD,
    ALTER,
    SUBTRACT;

    /** The word of the standard: {@code add}, {@code alter}, {@code subtract}. */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Reads {@code add 9 -1}, as the table of chord kinds writes it. */
  static DegreeChange parse(String text) {
    String[] words = text.strip().split(" ", -1);
    if (words.length != 3) {
      throw new IllegalArgumentException("“" + text + "” is no degree change; write add 9 -1");
    }
    return new DegreeChange(
        Type.valueOf(words[0].toUpperCase(Locale.ROOT)),
        Integer.parseInt(words[1]),
        Integer.parseInt(words[2]));
  }
}
