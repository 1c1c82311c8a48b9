package holdfast.theory;

import java.util.Collection;
import java.util.List;

/** Puts a chord and the row that speaks of it together into a palette. */
final class PaletteMixing {

  private PaletteMixing() {}

  static ChordPalette mix(ChordSymbol chord, ScaleRow row) {
    ChordKind kind = chord.kind();
    int root = chord.root().pitchClass();
    List<Scale> scales = scales(kind, row);

    PitchClassSet chordTones =
        pitchClasses(kind.sounding().stream().filter(d -> !isColour(kind, d)).toList(), root)
            .union(PitchClassSet.of(chord.lowest().pitchClass()));
    PitchClassSet colours =
        pitchClasses(kind.sounding().stream().filter(d -> isColour(kind, d)).toList(), root);
    PitchClassSet contradicted = pitchClasses(contradicted(kind), root).minus(colours);
    PitchClassSet tensions =
        pitchClasses(row.tensions(), root)
            .union(pitchClasses(row.disputed(), root))
            .minus(contradicted)
            .minus(pitchClasses(leftNatural(kind), root))
            .union(colours)
            .minus(chordTones);
    PitchClassSet handled = pitchClasses(row.handle(), root).minus(chordTones).minus(tensions);
    PitchClassSet scaleTones = PitchClassSet.EMPTY;
    for (Scale scale : scales) {
      scaleTones = scaleTones.union(scale.steps().transpose(root));
    }
    scaleTones = scaleTones.minus(contradicted).minus(chordTones).minus(tensions);
    return new ChordPalette(
        row.context(),
        root,
        chordTones,
        tensions,
        scaleTones,
        handled,
        pitchClasses(row.disputed(), root).intersection(tensions),
        chord.guideTones(),
        scales,
        row.disagreement());
  }

  /** The taught scales that hold the chord; when none does, the first with the chord in it. */
  private static List<Scale> scales(ChordKind kind, ScaleRow row) {
    PitchClassSet chord = kind.soundingSteps();
    List<Scale> holding =
        row.scales().stream().filter(s -> chord.minus(s.steps()).isEmpty()).toList();
    if (!holding.isEmpty()) {
      return holding;
    }
    Scale first = row.scales().get(0);
    return List.of(new Scale(first.name() + " with the chord", first.steps().union(chord)));
  }

  /**
   * A written #11 colours the chord (so the worked examples count it), and so does the pool of an
   * altered chord, of which a player chooses.
   */
  private static boolean isColour(ChordKind kind, Degree degree) {
    boolean pool = kind.has(5, -1) && kind.has(5, 1);
    return degree.equals(new Degree(11, 1))
        || (pool && (degree.number() == 5 || degree.number() == 9));
  }

  /** Notes that the chord's own altered degrees speak against: the natural 9 over a written b9. */
  private static List<Degree> contradicted(ChordKind kind) {
    return List.of(9, 11, 13).stream()
        .map(n -> new Degree(n, 0))
        .filter(natural -> !kind.degrees().contains(natural))
        .filter(natural -> speaksAgainst(kind, natural))
        .toList();
  }

  private static boolean speaksAgainst(ChordKind kind, Degree natural) {
    int n = natural.number();
    boolean sharpFifth = n == 13 && kind.has(7, -1) && kind.has(5, 1);
    return sharpFifth || kind.degrees().stream().anyMatch(d -> d.number() == n && d.alter() != 0);
  }

  /** Altered ninths and thirteenths that would rub against the natural one that is written. */
  private static List<Degree> leftNatural(ChordKind kind) {
    return List.of(new Degree(9, -1), new Degree(9, 1), new Degree(13, -1)).stream()
        .filter(altered -> kind.has(altered.number(), 0))
        .toList();
  }

  private static PitchClassSet pitchClasses(Collection<Degree> degrees, int root) {
    return PitchClassSet.of(degrees.stream().mapToInt(d -> d.semitones() + root).toArray());
  }
}
