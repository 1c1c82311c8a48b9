package holdfast.theory;

import java.util.List;

/**
 * How far is it from one chord to the next in their keys? Lerdahl's chord distance rule: steps
 * between the keys on the circle of fifths, steps between the roots on the circle of fifths of the
 * scale, and the notes that are new at each level of the basic space. Lerdahl, "Tonal Pitch Space",
 * 2001 (the rule is first in Music Perception 5, 1988).
 *
 * @param keySteps i: steps between the keys' signatures, 0 to 6
 * @param rootSteps j: steps between the roots on the seven-note circle of fifths, 0 to 3
 * @param newNotes k: notes of the second chord's basic space (root, fifth, triad, scale) that the
 *     first one's lacks
 */
public record TonalPitchSpace(int keySteps, int rootSteps, int newNotes) {

  /** Letters in the order of fifths. */
  private static final List<Letter> FIFTHS =
      List.of(Letter.F, Letter.C, Letter.G, Letter.D, Letter.A, Letter.E, Letter.B);

  /** The way from a chord in its key to a chord in its own. */
  public static TonalPitchSpace between(ChordSymbol from, Key fromKey, ChordSymbol to, Key toKey) {
    int newNotes = 0;
    List<PitchClassSet> before = levels(from, fromKey);
    List<PitchClassSet> after = levels(to, toKey);
    for (int level = 0; level < after.size(); level++) {
      newNotes += after.get(level).minus(before.get(level)).size();
    }
    int roots =
        Math.floorMod(FIFTHS.indexOf(to.root().letter()) - FIFTHS.indexOf(from.root().letter()), 7);
    return new TonalPitchSpace(keySteps(fromKey, toKey), Math.min(roots, 7 - roots), newNotes);
  }

  /** Steps between the signatures of two keys on the circle of fifths, 0 to 6. */
  public static int keySteps(Key from, Key to) {
    int fifths = Math.floorMod(to.fifths() - from.fifths(), 12);
    return Math.min(fifths, 12 - fifths);
  }

  /** Root, fifth, triad and scale, each with the levels above in it. */
  private static List<PitchClassSet> levels(ChordSymbol chord, Key key) {
    int root = chord.root().pitchClass();
    PitchClassSet triad = PitchClassSet.EMPTY;
    PitchClassSet fifth = PitchClassSet.of(root);
    for (Degree degree : chord.kind().degrees()) {
      if (degree.number() <= 5) {
        triad = triad.union(PitchClassSet.of(root + degree.semitones()));
      }
      if (degree.number() == 5) {
        fifth = fifth.union(PitchClassSet.of(root + degree.semitones()));
      }
    }
    return List.of(PitchClassSet.of(root), fifth, triad, key.scale().union(triad));
  }

  /** The distance: the sum of the three. */
  public int distance() {
    return keySteps + rootSteps + newNotes;
  }
}
