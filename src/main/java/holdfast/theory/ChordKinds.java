package holdfast.theory;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The table of chord kinds and its indexes: by spelling and by degrees. */
final class ChordKinds {

  static final ChordKinds TABLE = load();

  private final List<ChordKind> kinds;
  private final Map<String, ChordKind> bySpelling;
  private final Map<List<Degree>, ChordKind> byDegrees;

  private ChordKinds(List<ChordKind> kinds) {
    this.kinds = List.copyOf(kinds);
    this.bySpelling = new LinkedHashMap<>();
    this.byDegrees = new LinkedHashMap<>();
    for (ChordKind kind : kinds) {
      add(bySpelling, ChordSigns.plain(kind.suffix()), kind);
      add(byDegrees, sorted(kind.degrees()), kind);
    }
    for (ChordKind kind : kinds) {
      for (String spelling : kind.spellings()) {
        bySpelling.putIfAbsent(ChordSigns.plain(spelling), kind);
      }
    }
  }

  private static <K> void add(Map<K, ChordKind> index, K key, ChordKind kind) {
    ChordKind before = index.put(key, kind);
    if (before != null) {
      throw new IllegalStateException(
          "chord-kinds.csv has “"
              + kind.suffix()
              + "” and “"
              + before.suffix()
              + "” for one chord");
    }
  }

  private static ChordKinds load() {
    List<ChordKind> kinds = new ArrayList<>();
    for (Table.Row row : Table.named("chord-kinds.csv").rows()) {
      kinds.add(
          new ChordKind(
              row.get("suffix"),
              degrees(row.words("degrees")),
              degrees(row.words("omitted")),
              row.get("kind"),
              row.parts("changes").stream().map(DegreeChange::parse).toList(),
              row.get("harte"),
              row.words("spellings")));
    }
    return new ChordKinds(kinds);
  }

  private static List<Degree> degrees(List<String> words) {
    return words.stream().map(Degree::parse).toList();
  }

  List<ChordKind> kinds() {
    return kinds;
  }

  /** Every suffix that the table spells, cleaned, with its kind. */
  Map<String, ChordKind> spellings() {
    return bySpelling;
  }

  Optional<ChordKind> read(String suffix) {
    String clean = ChordSigns.plain(suffix);
    ChordKind row = bySpelling.get(clean);
    return row != null ? Optional.of(row) : ChordGrammar.degrees(clean).flatMap(this::reading);
  }

  /** Whether a suffix would be read as just these sorted degrees. */
  private boolean isReadAs(String suffix, List<Degree> degrees) {
    String plain = ChordSigns.plain(suffix);
    ChordKind row = bySpelling.get(plain);
    return row != null
        ? sorted(row.degrees()).equals(degrees)
        : ChordGrammar.degrees(plain).filter(degrees::equals).isPresent();
  }

  Optional<ChordKind> reading(List<Degree> degrees) {
    List<Degree> sorted = sorted(degrees);
    ChordKind row = byDegrees.get(sorted);
    return row != null
        ? Optional.of(row)
        : ChordMaking.make(kinds, sorted, suffix -> isReadAs(suffix, sorted));
  }

  private static List<Degree> sorted(List<Degree> degrees) {
    return degrees.stream().sorted().distinct().toList();
  }
}
