package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.theory.ChordKind;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Degree;
import holdfast.theory.DegreeChange;
import holdfast.theory.Harmony;
import holdfast.theory.Letter;
import holdfast.theory.MusicXmlKind;
import holdfast.theory.NoChord;
import holdfast.theory.NoteName;
import holdfast.theory.OptionalChord;
import holdfast.theory.UnknownChordException;
import java.util.List;
import java.util.Optional;

/**
 * Reads one {@code harmony} element: root, kind, degrees, bass. The kinds that name a function
 * rather than a sound are read as the chord that sounds nearest, with a note.
 */
final class MusicXmlHarmony {

  private final XmlNode harmony;
  private final String place;
  private final String source;
  private final List<String> notes;

  /**
   * A harmony to be read.
   *
   * @param place for notes and errors: {@code bar 5}
   * @param notes where to say what could not be taken over
   */
  MusicXmlHarmony(XmlNode harmony, String source, String place, List<String> notes) {
    this.harmony = harmony;
    this.source = source;
    this.place = place;
    this.notes = notes;
  }

  Harmony read() {
    String kind = harmony.textAt("kind").orElse("");
    String text = kindText();
    if (kind.equals("none")) {
      return text.equals(NoChord.UNKNOWN.text()) ? NoChord.UNKNOWN : NoChord.SILENT;
    }
    if (harmony.all("kind").count() > 1) {
      notes.add(place + ": of several chords on top of each other the first is read");
    }
    NoteName root =
        note("root")
            .orElseThrow(
                () ->
                    wrong(
                        "a chord has no root (it may be a Roman numeral)",
                        "write it as a chord symbol in your notation program"));
    boolean isOptional = isInParentheses();
    String suffix = isOptional ? text.substring(0, text.length() - 1) : text;
    ChordKind read = kind(kind, root, suffix);
    Optional<NoteName> bass = note("bass");
    ChordSymbol symbol = new ChordSymbol(root, read, bass);
    return isOptional ? new OptionalChord(symbol) : symbol;
  }

  private String kindText() {
    return harmony.first("kind").flatMap(k -> k.attribute("text")).orElse("").strip();
  }

  /** A chord that may be left out is shown in parentheses, which root and kind share. */
  private boolean isInParentheses() {
    boolean opens =
        harmony
            .at("root", "root-step")
            .flatMap(step -> step.attribute("text"))
            .orElse("")
            .startsWith("(");
    String text = kindText();
    long open = text.chars().filter(c -> c == '(').count();
    long close = text.chars().filter(c -> c == ')').count();
    return opens && close == open + 1;
  }

  private Optional<NoteName> note(String name) {
    Optional<String> step = harmony.textAt(name, name + "-step");
    if (step.isEmpty()) {
      return Optional.empty();
    }
    double alter = harmony.numberAt(name, name + "-alter").orElse(0.0);
    try {
      Letter letter = Letter.valueOf(step.get());
      if (alter != Math.rint(alter)) {
        throw wrong("a note lies between the keys", "use chords without microtones");
      }
      return Optional.of(new NoteName(letter, (int) alter));
    } catch (IllegalArgumentException e) {
      throw wrong(
          "“" + Quoted.shortly(step.get()) + "” is no note that a chord can have", "write A to G");
    }
  }

  private ChordKind kind(String kind, NoteName root, String text) {
    Optional<ChordKind> spelled = spelled(root, text);
    List<DegreeChange> changes = harmony.all("degree").map(this::change).toList();
    Optional<ChordKind> named = changed(kind, changes);
    if (kind.equals("other")) {
      boolean isBare = changes.isEmpty();
      return (isBare ? spelled : named.or(() -> spelled)).orElseThrow(() -> unknown(kind, text));
    }
    Optional<ChordKind> bare = MusicXmlKind.read(kind, List.of());
    if (bare.isPresent()) {
      if (changes.isEmpty()) {
        return spelled.filter(printed -> saysMore(printed, bare.get())).orElse(bare.get());
      }
      return named.orElseGet(() -> plain(bare.get(), root));
    }
    Optional<ChordKind> nearest = MusicXmlKind.nearestSound(kind);
    if (nearest.isPresent()) {
      String symbol = new ChordSymbol(root, nearest.get(), Optional.empty()).text();
      notes.add(place + ": a " + kind + " chord is read as what sounds nearest, " + symbol);
      return nearest.get();
    }
    ChordKind printed = spelled.orElseThrow(() -> unknown(kind, text));
    notes.add(
        place
            + ": MusicXML has no kind “"
            + kind
            + "”; the chord is read as it is printed, "
            + text);
    return printed;
  }

  private Optional<ChordKind> changed(String kind, List<DegreeChange> changes) {
    try {
      return MusicXmlKind.read(kind, changes);
    } catch (IllegalArgumentException e) {
      throw wrong(
          "a degree of a chord is altered further than any chord goes", "check its degrees");
    }
  }

  private ChordKind plain(ChordKind bare, NoteName root) {
    notes.add(
        place
            + ": no chord symbol says these degrees; the chord is read as "
            + new ChordSymbol(root, bare, Optional.empty()).text());
    return bare;
  }

  private Optional<ChordKind> spelled(NoteName root, String text) {
    // With symbols the text only follows a sign that the kind stands for.
    boolean hasSymbol = harmony.first("kind").filter(k -> k.says("use-symbols", "yes")).isPresent();
    if (text.isEmpty() || hasSymbol) {
      return Optional.empty();
    }
    try {
      return Harmony.parse(root.text() + text).chord().map(ChordSymbol::kind);
    } catch (UnknownChordException e) {
      // What is printed need not be a symbol that we know; the kind says what sounds.
      return Optional.empty();
    }
  }

  /**
   * Whether the printed symbol keeps the third and seventh of the kind and adds to it: some
   * programs write "7alt" beside the kind "dominant", and no degrees.
   */
  private static boolean saysMore(ChordKind printed, ChordKind named) {
    List<Degree> kept = named.degrees().stream().filter(degree -> degree.number() != 5).toList();
    return printed.degrees().size() > named.degrees().size() && printed.degrees().containsAll(kept);
  }

  private DegreeChange change(XmlNode degree) {
    DegreeChange.Type type =
        switch (degree.textAt("degree-type").orElse("")) {
          case "alter" -> DegreeChange.Type.ALTER;
          case "subtract" -> DegreeChange.Type.SUBTRACT;
          default -> DegreeChange.Type.ADD;
        };
    return new DegreeChange(type, whole(degree, "degree-value"), whole(degree, "degree-alter"));
  }

  private static int whole(XmlNode change, String name) {
    return change.numberAt(name).map(number -> (int) Math.rint(number)).orElse(0);
  }

  private ChartException unknown(String kind, String text) {
    return wrong(
        "a chord of the kind “"
            + kind
            + "”"
            + (text.isEmpty() ? "" : ", printed “" + Quoted.shortly(text) + "”")
            + ", says nothing that I know",
        "give it one of the kinds of MusicXML 4.0, such as dominant or minor-seventh");
  }

  private ChartException wrong(String wrong, String mend) {
    return new ChartException(source, place + ": " + wrong, mend);
  }
}
