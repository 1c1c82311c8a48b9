package holdfast.motif;

import holdfast.theory.PitchClassSet;

/**
 * What lies under a note as far as the judge needs it: the chord of the moment, its scale, and the
 * notes that sit well there.
 *
 * @param chord the chord's notes; empty where no chord is known
 * @param scale the scale of the moment; empty where none is known
 * @param welcome notes that may be held there: chord tones and tensions; empty where unknown
 */
record Ground(PitchClassSet chord, PitchClassSet scale, PitchClassSet welcome) {

  /** Nothing is known. */
  static final Ground UNKNOWN =
      new Ground(PitchClassSet.EMPTY, PitchClassSet.EMPTY, PitchClassSet.EMPTY);

  /** Whether a chord says which notes are welcome. */
  boolean knowsChord() {
    return !welcome.isEmpty();
  }

  /** Whether the note sits well over the chord; true where no chord is known. */
  boolean welcomes(int pitch) {
    return welcome.isEmpty() || welcome.contains(pitch);
  }
}
