package holdfast.chart;

import holdfast.theory.ChordKind;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Degree;
import holdfast.theory.Harmony;
import holdfast.theory.Letter;
import holdfast.theory.NoChord;
import holdfast.theory.NoteName;
import holdfast.theory.OptionalChord;
import holdfast.theory.UnknownChordException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Reads one {@code harmony} element: root, kind, degrees, bass. The kinds without degrees are the
 * rows of the chord table; the kinds that name a function rather than a sound are read as the chord
 * that sounds nearest, with a note.
 */
final class MusicXmlHarmony {

  /** Functional kinds and the degrees of what sounds nearest; common practice, no source. */
  private static final Map<String, List<Degree>> NEAREST =
      Map.of(
          "Neapolitan", degrees("1 3 5"),
          "Italian", degrees("1 3 b7"),
          "French", degrees("1 3 b5 b7"),
          "German", degrees("1 3 5 b7"),
          "Tristan", degrees("1 b3 b5 b7"),
          "pedal", degrees("1 5"));

  private static final Map<String, List<Degree>> KINDS =
      ChordKind.known().stream()
          .filter(kind -> kind.musicXmlChanges().isEmpty())
          .collect(
              Collectors.toMap(
                  ChordKind::musicXmlKind, ChordKind::degrees, (a, b) -> a, TreeMap::new));

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
      throw wrong("“" + step.get() + "” is no note that a chord can have", "write A to G");
    }
  }

  private ChordKind kind(String kind, NoteName root, String text) {
    Optional<ChordKind> spelled = spelled(root, text);
    Optional<List<Degree>> known = Optional.ofNullable(KINDS.get(kind));
    boolean changes = harmony.first("degree").isPresent();
    if (known.isPresent()) {
      boolean textSaysMore =
          !changes && spelled.isPresent() && saysMore(spelled.get().degrees(), known.get());
      return textSaysMore ? spelled.get() : changed(known.get());
    }
    if (kind.equals("other")) {
      if (changes) {
        return changed(degrees("1"));
      }
      return spelled.orElseThrow(() -> unknown(kind, text));
    }
    List<Degree> nearest = NEAREST.get(kind);
    if (nearest != null) {
      ChordKind read = changed(nearest);
      notes.add(
          place
              + ": a "
              + kind
              + " chord is read as what sounds nearest, "
              + new ChordSymbol(root, read, Optional.empty()).text());
      return read;
    }
    ChordKind read = spelled.orElseThrow(() -> unknown(kind, text));
    notes.add(
        place
            + ": MusicXML has no kind “"
            + kind
            + "”; the chord is read as it is printed, "
            + text);
    return read;
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
  private static boolean saysMore(List<Degree> printed, List<Degree> kind) {
    List<Degree> kept = kind.stream().filter(degree -> degree.number() != 5).toList();
    return printed.size() > kind.size() && printed.containsAll(kept);
  }

  /** The degrees of the kind with what the {@code degree} elements add, alter and subtract. */
  private ChordKind changed(List<Degree> kind) {
    Set<Degree> degrees = new HashSet<>(kind);
    harmony.all("degree").forEach(change -> change(degrees, change));
    if (degrees.isEmpty()) {
      throw wrong("nothing is left of a chord", "write its notes or N.C.");
    }
    return ChordKind.of(List.copyOf(degrees));
  }

  private void change(Set<Degree> degrees, XmlNode change) {
    int number = whole(change, "degree-value");
    int alter = whole(change, "degree-alter");
    Optional<Degree> there = degrees.stream().filter(d -> d.number() == number).findFirst();
    try {
      switch (change.textAt("degree-type").orElse("")) {
        case "subtract" -> there.ifPresent(degrees::remove);
        case "alter" -> {
          there.ifPresent(degrees::remove);
          // A degree that the kind lacks is altered against a dominant chord, as an added one is.
          degrees.add(
              there
                  .map(degree -> new Degree(number, degree.alter() + alter))
                  .orElseGet(() -> added(number, alter)));
        }
        default -> degrees.add(added(number, alter));
      }
    } catch (IllegalArgumentException e) {
      throw wrong(
          "a degree " + number + " altered by " + alter + " is in no chord", "write 1 to 13");
    }
  }

  /** Added degrees count against a dominant chord, whose seventh is flat. */
  private static Degree added(int number, int alter) {
    return new Degree(number, number == 7 ? alter - 1 : alter);
  }

  private static int whole(XmlNode change, String name) {
    return change.numberAt(name).map(number -> (int) Math.rint(number)).orElse(0);
  }

  private ChartException unknown(String kind, String text) {
    return wrong(
        "a chord of the kind “"
            + kind
            + "”"
            + (text.isEmpty() ? "" : ", printed “" + text + "”")
            + ", says nothing that I know",
        "give it one of the kinds of MusicXML 4.0, such as dominant or minor-seventh");
  }

  private ChartException wrong(String wrong, String mend) {
    return new ChartException(source, place + ": " + wrong, mend);
  }

  private static List<Degree> degrees(String text) {
    return java.util.Arrays.stream(text.split(" ", -1)).map(Degree::parse).toList();
  }
}
