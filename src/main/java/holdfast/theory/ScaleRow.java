package holdfast.theory;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A row of chord-scales.csv: a place in a tune, and what goes with a chord there.
 *
 * @param context what a musician calls the place
 * @param families the kinds of chord it speaks of
 * @param key {@code major}, {@code minor}, {@code modal} or {@code any}
 * @param steps semitones of the roots above the tonic; empty for any
 * @param next what the next chord must be, in the table's words
 * @param scales the taught scales, the first choice first
 * @param tensions notes that colour the chord
 * @param handle notes better not held
 * @param disputed notes about which the sources disagree
 * @param disagreement what they disagree about; empty when they agree
 */
record ScaleRow(
    String context,
    Set<ChordFamily> families,
    String key,
    PitchClassSet steps,
    String next,
    List<Scale> scales,
    List<Degree> tensions,
    List<Degree> handle,
    List<Degree> disputed,
    String disagreement) {

  private static final List<ScaleRow> TABLE =
      Table.named("chord-scales.csv").rows().stream().map(ScaleRow::of).toList();

  private static final int FOURTH = 5;
  private static final int SEMITONE_DOWN = 11;

  private static ScaleRow of(Table.Row row) {
    return new ScaleRow(
        row.get("context"),
        row.words("families").stream().map(ChordFamily::named).collect(Collectors.toSet()),
        row.get("key"),
        PitchClassSet.of(
            row.words("degrees").stream()
                .filter(word -> !word.equals("any"))
                .mapToInt(RomanNumeral::semitones)
                .toArray()),
        row.get("next"),
        row.parts("scales").stream().map(Scale::named).toList(),
        degrees(row, "tensions"),
        degrees(row, "handle"),
        degrees(row, "disputed"),
        row.get("disagreement"));
  }

  private static List<Degree> degrees(Table.Row row, String column) {
    return row.words(column).stream().map(Degree::parse).toList();
  }

  /** The first row that speaks of the chord where it stands. */
  static ScaleRow of(ChordSymbol chord, Optional<Key> key, Optional<ChordSymbol> next) {
    return TABLE.stream()
        .filter(row -> row.matches(chord, key, next))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no scale row for " + chord.text()));
  }

  private boolean matches(ChordSymbol chord, Optional<Key> where, Optional<ChordSymbol> following) {
    return families.contains(ChordFamily.of(chord.kind()))
        && (key.equals("any") || where.filter(this::keyMatches).isPresent())
        && (steps.isEmpty() || where.filter(k -> steps.contains(above(k, chord))).isPresent())
        && nextMatches(chord, where, following);
  }

  private boolean keyMatches(Key where) {
    return switch (key) {
      case "modal" -> where.mode() != Mode.MAJOR && where.mode() != Mode.MINOR;
      case "minor" -> where.mode().hasMinorThird();
      case "major" -> !where.mode().hasMinorThird();
      default -> throw new IllegalStateException("chord-scales.csv: no key is called " + key);
    };
  }

  private static int above(Key key, ChordSymbol chord) {
    return Math.floorMod(chord.root().pitchClass() - key.tonic().pitchClass(), 12);
  }

  private boolean nextMatches(
      ChordSymbol chord, Optional<Key> where, Optional<ChordSymbol> following) {
    int way =
        following
            .map(n -> Math.floorMod(n.root().pitchClass() - chord.root().pitchClass(), 12))
            .orElse(0);
    ChordFamily family = following.map(n -> ChordFamily.of(n.kind())).orElse(ChordFamily.MAJOR);
    boolean minorThird = following.filter(n -> n.kind().has(3, -1)).isPresent();
    return switch (next) {
      case "any" -> true;
      case "up4?" -> following.isEmpty() || way == FOURTH;
      case "up4-major" -> way == FOURTH && !minorThird && !family.isDominant();
      case "up4-minor" -> way == FOURTH && minorThird;
      case "down1" -> way == SEMITONE_DOWN;
      case "still" -> way != FOURTH && way != SEMITONE_DOWN;
      case "tonic-dominant" ->
          family.isDominant()
              && where.isPresent()
              && following.filter(n -> above(where.get(), n) == 0).isPresent();
      default -> throw new IllegalStateException("chord-scales.csv: no next is called " + next);
    };
  }
}
