package holdfast.theory;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Names a chord that the table lacks: the nearest plain kind, and what is changed in it. */
final class ChordMaking {

  private static final Pattern SIGN = Pattern.compile("[b#][0-9]");

  /** A note taken away reads worse than one added. */
  private static final int LEFT_OUT = 3;

  /** A wrong third, sixth or seventh cannot be mended by a sign. */
  private static final int WRONG = 10;

  private ChordMaking() {}

  /** The kind, or empty when no suffix that we can write reads back as these degrees. */
  static Optional<ChordKind> make(
      List<ChordKind> kinds, List<Degree> degrees, Predicate<String> readsBack) {
    List<ChordKind> near = byNearness(kinds, degrees);
    ChordKind standard =
        near.stream().filter(kind -> kind.musicXmlChanges().isEmpty()).findFirst().orElseThrow();
    return near.stream()
        .filter(ChordMaking::isPlain)
        .flatMap(base -> Stream.of(suffix(base, degrees, false), suffix(base, degrees, true)))
        .filter(readsBack)
        .findFirst()
        .map(suffix -> kind(suffix, degrees, standard));
  }

  private static ChordKind kind(String suffix, List<Degree> degrees, ChordKind standard) {
    return new ChordKind(
        suffix,
        degrees,
        omitted(degrees),
        standard.musicXmlKind(),
        changes(standard.degrees(), degrees),
        degrees.stream().skip(1).map(Degree::text).collect(Collectors.joining(",", "(", ")")),
        List.of());
  }

  private static List<ChordKind> byNearness(List<ChordKind> kinds, List<Degree> degrees) {
    record Measured(ChordKind kind, int distance) {}
    return kinds.stream()
        .map(kind -> new Measured(kind, distance(kind.degrees(), degrees)))
        .sorted(
            Comparator.comparingInt(Measured::distance)
                .thenComparingInt(near -> near.kind().suffix().length()))
        .map(Measured::kind)
        .toList();
  }

  /** How many signs it takes to write one chord as a change of the other. */
  private static int distance(List<Degree> from, List<Degree> to) {
    int signs = 0;
    for (Degree degree : from) {
      if (!to.contains(degree)) {
        signs += (isCore(degree) ? WRONG : 0) + (isAltered(degree, to) ? 0 : LEFT_OUT);
      }
    }
    for (Degree degree : to) {
      if (!from.contains(degree)) {
        signs += 1 + (isCore(degree) ? WRONG : 0);
      }
    }
    return signs;
  }

  /** The degrees that say which chord it is; the fifth can be altered by a sign. */
  private static boolean isCore(Degree degree) {
    return degree.number() <= 7 && degree.number() != 5;
  }

  /** Whether the chord has an altered degree in this one's place. */
  private static boolean isAltered(Degree degree, List<Degree> chord) {
    for (Degree other : chord) {
      if (other.number() == degree.number() && other.alter() != 0) {
        return true;
      }
    }
    return false;
  }

  private static boolean isPlain(ChordKind kind) {
    String suffix = kind.suffix();
    return suffix.equals("m7b5")
        || !(SIGN.matcher(suffix).find() || suffix.contains("alt") || suffix.contains("add"));
  }

  /**
   * The base's suffix with the changes in parentheses. A natural degree needs "add" on a triad; on
   * a seventh chord only where a bare number means more, as 7(13) means the whole thirteenth chord.
   */
  private static String suffix(ChordKind base, List<Degree> degrees, boolean add) {
    boolean triad = base.degrees().stream().noneMatch(d -> d.number() == 7 || d.number() == 6);
    List<String> signs = new ArrayList<>();
    for (Degree degree : degrees) {
      if (!base.degrees().contains(degree)) {
        signs.add(sign(degree, triad || add));
      }
    }
    for (Degree degree : base.degrees()) {
      if (degrees.stream().noneMatch(d -> d.number() == degree.number())) {
        signs.add("no" + degree.number());
      }
    }
    return base.suffix() + (signs.isEmpty() ? "" : "(" + String.join(",", signs) + ")");
  }

  private static String sign(Degree degree, boolean add) {
    if (degree.number() == 2 || degree.number() == 4) {
      return "sus" + degree.text();
    }
    return degree.alter() == 0 && add ? "add" + degree.text() : degree.text();
  }

  /**
   * The chord with a second or fourth beside its third called a ninth or eleventh, as symbols do.
   */
  static List<Degree> besideThird(Collection<Degree> chord) {
    boolean hasThird = chord.stream().anyMatch(d -> d.number() == 3);
    return chord.stream()
        .map(
            d ->
                hasThird && (d.number() == 2 || d.number() == 4)
                    ? new Degree(d.number() + 7, d.alter())
                    : d)
        .toList();
  }

  /** A natural third and a natural eleventh clash: see the rows 11 and 13. */
  private static List<Degree> omitted(List<Degree> degrees) {
    Degree third = new Degree(3, 0);
    Degree eleventh = new Degree(11, 0);
    if (!degrees.contains(third)
        || !degrees.contains(eleventh)
        || !degrees.contains(new Degree(7, -1))) {
      return List.of();
    }
    return degrees.contains(new Degree(13, 0)) ? List.of(eleventh) : List.of(third);
  }

  private static List<DegreeChange> changes(List<Degree> from, List<Degree> to) {
    List<DegreeChange> changes = new ArrayList<>();
    List<Degree> extra = new ArrayList<>(to);
    extra.removeAll(from);
    for (Degree degree : from) {
      if (!to.contains(degree)) {
        Degree instead =
            extra.stream().filter(d -> d.number() == degree.number()).findFirst().orElse(degree);
        if (instead.equals(degree)) {
          changes.add(new DegreeChange(DegreeChange.Type.SUBTRACT, degree.number(), 0));
        } else {
          extra.remove(instead);
          int by = instead.alter() - degree.alter();
          changes.add(new DegreeChange(DegreeChange.Type.ALTER, degree.number(), by));
        }
      }
    }
    for (Degree degree : extra) {
      // An added degree counts against a dominant chord, whose seventh is flat.
      int alter = degree.number() == 7 ? degree.alter() + 1 : degree.alter();
      changes.add(new DegreeChange(DegreeChange.Type.ADD, degree.number(), alter));
    }
    return changes;
  }
}
