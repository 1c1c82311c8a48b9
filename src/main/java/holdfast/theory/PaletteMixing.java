package holdfast.theory;

import java.util.List;

/** Puts a chord and the row that speaks of it together into a palette. */
final class PaletteMixing {

  private PaletteMixing() {}

  static ChordPalette mix(ChordSymbol chord, ScaleRow row) {
    ChordKind kind = chord.kind();
    int root = chord.root().pitchClass();
    List<Scale> scales = scales(kind, row);

    PitchClassSet colours = colours(kind);
    PitchClassSet bass = PitchClassSet.of(chord.lowest().pitchClass() - root);
    PitchClassSet chordTones = kind.soundingSteps().minus(colours).union(bass);
    PitchClassSet contradicted = contradicted(kind).minus(colours);
    PitchClassSet tensions =
        row.tensions()
            .union(row.disputed())
            .minus(contradicted)
            .minus(rubbing(kind))
            .union(colours)
            .minus(chordTones);
    PitchClassSet scaleTones = PitchClassSet.EMPTY;
    for (Scale scale : scales) {
      scaleTones = scaleTones.union(scale.steps());
    }
    return new ChordPalette(
        row.context(),
        root,
        chordTones.transpose(root),
        tensions.transpose(root),
        scaleTones.minus(contradicted).minus(chordTones).minus(tensions).transpose(root),
        row.handle().minus(chordTones).minus(tensions).transpose(root),
        row.disputed().intersection(tensions).transpose(root),
        chord.guideTones(),
        scales,
        row.disagreement());
  }

  /** The taught scales that hold the chord; when none does, the first with the chord in it. */
  private static List<Scale> scales(ChordKind kind, ScaleRow row) {
    PitchClassSet chord = kind.soundingSteps();
    List<Scale> holding =
        row.scales().stream().filter(scale -> chord.minus(scale.steps()).isEmpty()).toList();
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
  private static PitchClassSet colours(ChordKind kind) {
    boolean pool = kind.has(5, -1) && kind.has(5, 1);
    PitchClassSet colours = PitchClassSet.EMPTY;
    for (Degree degree : kind.sounding()) {
      boolean ofPool = pool && (degree.number() == 5 || degree.number() == 9);
      if (ofPool || (degree.number() == 11 && degree.alter() == 1)) {
        colours = colours.union(PitchClassSet.of(degree.semitones()));
      }
    }
    return colours;
  }

  /** Notes that the chord's own altered degrees speak against: the natural 9 over a written b9. */
  private static PitchClassSet contradicted(ChordKind kind) {
    PitchClassSet notes = PitchClassSet.EMPTY;
    for (Degree degree : kind.degrees()) {
      int number = degree.number();
      boolean tension = number == 9 || number == 11 || number == 13;
      if (tension && degree.alter() != 0 && !kind.has(number, 0)) {
        notes = notes.union(PitchClassSet.of(degree.semitones() - degree.alter()));
      }
    }
    // The augmented fifth of a dominant sounds as its b13.
    boolean flatThirteenth = kind.has(7, -1) && kind.has(5, 1) && !kind.has(13, 0);
    return flatThirteenth ? notes.union(PitchClassSet.of(new Degree(13, 0).semitones())) : notes;
  }

  /** Altered ninths and thirteenths that would rub against the natural one that is written. */
  private static PitchClassSet rubbing(ChordKind kind) {
    PitchClassSet notes = PitchClassSet.EMPTY;
    if (kind.has(9, 0)) {
      notes = PitchClassSet.of(1, 3);
    }
    return kind.has(13, 0) ? notes.union(PitchClassSet.of(8)) : notes;
  }
}
