package holdfast.carry;

import holdfast.theory.ChordPalette;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.Optional;

/** How an idea gets from one chord to the next. */
public enum Way {
  /** Note for note the same. */
  LITERAL("literal"),
  /** Some notes move so that they fit. */
  SKEWED("skewed to the chord"),
  /** The whole idea moves by a step of the scale. */
  SEQUENCE("sequence"),
  /** The whole idea moves by one interval. */
  TRANSPOSED("transposed");

  private final String text;

  Way(String text) {
    this.text = text;
  }

  /**
   * The way from one statement to the next, as a listener takes it: the scale is the new chord's,
   * or without one that of the key.
   *
   * @throws IllegalArgumentException when the statements differ in their number of notes
   */
  public static Way between(Statement before, Statement after, Optional<Key> key) {
    if (before.size() != after.size()) {
      throw new IllegalArgumentException(
          "statements of " + before.size() + " and " + after.size() + " notes are not compared");
    }
    int shift = after.pitch(0) - before.pitch(0);
    boolean together = true;
    for (int i = 1; i < before.size(); i++) {
      together &= after.pitch(i) - before.pitch(i) == shift;
    }
    if (together) {
      return shift == 0 ? LITERAL : TRANSPOSED;
    }
    PitchClassSet scale =
        after
            .harmony()
            .map(harmony -> ChordPalette.of(harmony, key, Optional.empty()).scale())
            .filter(notes -> !notes.isEmpty())
            .or(() -> key.map(Key::scale))
            .orElse(PitchClassSet.EMPTY);
    for (int steps : new int[] {-1, 1}) {
      boolean bySteps = !scale.isEmpty();
      for (int i = 0; i < before.size() && bySteps; i++) {
        bySteps = Frame.scaleStep(before.pitch(i), steps, scale) == after.pitch(i);
      }
      if (bySteps) {
        return SEQUENCE;
      }
    }
    return SKEWED;
  }

  /** As written in answers. */
  public String text() {
    return text;
  }
}
