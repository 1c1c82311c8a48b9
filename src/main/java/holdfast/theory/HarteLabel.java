package holdfast.theory;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Chord labels of research data: {@code Eb:min7/b3}, {@code G:(3,5,b7)}, {@code N}. The syntax is
 * Harte, Sandler, Abdallah and Gómez, "Symbolic representation of musical chords", ISMIR 2005; its
 * shorthands and those for eleventh and thirteenth chords are a column of chord-kinds.csv.
 */
public final class HarteLabel {

  private static final Pattern FORM =
      Pattern.compile("([A-G][b#]*)(?::([a-z0-9]*)(?:\\(([^)]*)\\))?)?(?:/([b#]*[0-9]+))?");

  private HarteLabel() {}

  /**
   * Reads a label.
   *
   * @throws UnknownChordException when the text is no label, or no chord symbol says its notes
   */
  public static Harmony parse(String label) {
    String text = label.strip();
    if (text.equals("N")) {
      return NoChord.SILENT;
    }
    if (text.equals("X")) {
      return NoChord.UNKNOWN;
    }
    return chord(text).orElseThrow(() -> new UnknownChordException(label, List.of()));
  }

  private static Optional<Harmony> chord(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      return Optional.empty();
    }
    Optional<NoteName> root = NoteName.read(form.group(1));
    Optional<ChordKind> kind = kind(form.group(2), form.group(3));
    if (root.isEmpty() || kind.isEmpty()) {
      return Optional.empty();
    }
    Optional<NoteName> bass =
        Optional.ofNullable(form.group(4))
            .map(degree -> root.get().transpose(Degree.parse(degree).interval()));
    return Optional.of(new ChordSymbol(root.get(), kind.get(), bass));
  }

  /**
   * A shorthand with degrees added or, after a star, taken away; a list alone; or nothing: major.
   */
  private static Optional<ChordKind> kind(String shorthand, String list) {
    String name = shorthand == null ? "maj" : shorthand;
    TreeSet<Degree> degrees = new TreeSet<>();
    degrees.add(new Degree(1, 0));
    if (!name.isEmpty()) {
      Optional<ChordKind> base =
          ChordKind.known().stream().filter(kind -> kind.harte().equals(name)).findFirst();
      if (base.isEmpty()) {
        return Optional.empty();
      }
      degrees.addAll(base.get().degrees());
    }
    for (String part : list == null ? List.<String>of() : List.of(list.split(",", -1))) {
      String degree = part.strip();
      if (degree.startsWith("*")) {
        degrees.remove(Degree.parse(degree.substring(1)));
      } else {
        degrees.add(Degree.parse(degree));
      }
    }
    return ChordKind.reading(ChordMaking.besideThird(degrees));
  }

  /** The label of a harmony; an optional chord is labelled as the chord. */
  public static String of(Harmony harmony) {
    return harmony.chord().map(HarteLabel::of).orElse(harmony == NoChord.UNKNOWN ? "X" : "N");
  }

  private static String of(ChordSymbol chord) {
    String bass =
        chord.bass().map(note -> "/" + degree(Interval.up(chord.root(), note)).text()).orElse("");
    return chord.root().text() + ":" + chord.kind().harte() + bass;
  }

  private static Degree degree(Interval interval) {
    int natural = new Degree(interval.letterSteps() + 1, 0).semitones();
    return new Degree(interval.letterSteps() + 1, interval.semitones() - natural);
  }
}
