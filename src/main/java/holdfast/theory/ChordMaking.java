package holdfast.theory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Names a chord that the table lacks: the nearest plain kind, and what is changed in it. */
final class ChordMaking {

  private ChordMaking() {}

  /** The kind, or empty when no suffix that we can write reads back as these degrees. */
  static Optional<ChordKind> make(List<ChordKind> kinds, List<Degree> degrees) {
    ChordKind standard =
        byNearness(kinds, degrees)
            .filter(kind -> kind.musicXmlChanges().isEmpty())
            .findFirst()
            .orElseThrow();
    return byNearness(kinds, degrees)
        .filter(ChordMaking::isPlain)
        .map(base -> suffix(base, degrees))
        .filter(suffix -> readsBack(suffix, degrees))
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

  private static boolean readsBack(String suffix, List<Degree> degrees) {
    return ChordGrammar.degrees(ChordGrammar.clean(suffix)).filter(degrees::equals).isPresent();
  }

  private static Stream<ChordKind> byNearness(List<ChordKind> kinds, List<Degree> degrees) {
    return kinds.stream()
        .sorted(
            Comparator.comparingInt((ChordKind kind) -> distance(kind.degrees(), degrees))
                .thenComparingInt(kind -> kind.suffix().length()));
  }

  /** How many signs it takes to write one chord as a change of the other. */
  private static int distance(List<Degree> from, List<Degree> to) {
    int missing = (int) from.stream().filter(d -> !covered(d, to)).count();
    int extra = (int) to.stream().filter(d -> !from.contains(d)).count();
    // A note taken away reads worst, and a wrong third or seventh cannot be written at all.
    int wrong =
        (int)
            from.stream()
                .filter(d -> d.number() <= 7 && d.number() != 5 && !to.contains(d))
                .count();
    int lacking =
        (int)
            to.stream()
                .filter(d -> d.number() <= 7 && d.number() != 5 && !from.contains(d))
                .count();
    return 3 * missing + extra + 10 * wrong + 10 * lacking;
  }

  /** Whether the chord has the degree, or an altered one in its place. */
  private static boolean covered(Degree degree, List<Degree> chord) {
    return chord.contains(degree)
        || chord.stream().anyMatch(d -> d.number() == degree.number() && d.alter() != 0);
  }

  private static boolean isPlain(ChordKind kind) {
    String suffix = kind.suffix();
    return suffix.equals("m7b5")
        || !(suffix.matches(".*[b#][0-9].*") || suffix.contains("alt") || suffix.contains("add"));
  }

  private static String suffix(ChordKind base, List<Degree> degrees) {
    boolean seventh = base.degrees().stream().anyMatch(d -> d.number() == 7 || d.number() == 6);
    List<String> signs = new ArrayList<>();
    for (Degree degree : degrees) {
      if (!base.degrees().contains(degree)) {
        signs.add(sign(degree, seventh));
      }
    }
    for (Degree degree : base.degrees()) {
      if (degrees.stream().noneMatch(d -> d.number() == degree.number())) {
        signs.add("no" + degree.number());
      }
    }
    return base.suffix() + (signs.isEmpty() ? "" : "(" + String.join(",", signs) + ")");
  }

  private static String sign(Degree degree, boolean seventh) {
    if (degree.number() == 2 || degree.number() == 4) {
      return "sus" + degree.text();
    }
    return degree.alter() == 0 && !seventh ? "add" + degree.text() : degree.text();
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
