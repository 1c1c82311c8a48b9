package holdfast.theory;

/**
 * A scale under its usual name.
 *
 * @param name as taught, {@code Dorian}
 * @param steps semitones above its root, the root (0) among them
 */
public record Scale(String name, PitchClassSet steps) {

  /** Checks that the root belongs to the scale. */
  public Scale {
    if (!steps.contains(0)) {
      throw new IllegalArgumentException("the scale " + name + " lacks its own root");
    }
  }

  /** Its pitch classes from a root. */
  public PitchClassSet on(NoteName root) {
    return steps.transpose(root.pitchClass());
  }
}
