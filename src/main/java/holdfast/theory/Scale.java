package holdfast.theory;

import java.util.List;

/**
 * A scale under its usual name.
 *
 * @param name as taught, {@code Dorian}
 * @param steps semitones above its root, the root (0) among them
 */
public record Scale(String name, PitchClassSet steps) {

  private static final List<Scale> KNOWN =
      Table.named("scales.csv").rows().stream()
          .map(row -> new Scale(row.get("name"), steps(row.words("steps"))))
          .toList();

  /** Checks that the root belongs to the scale. */
  public Scale {
    if (!steps.contains(0)) {
      throw new IllegalArgumentException("the scale " + name + " lacks its own root");
    }
  }

  /** The scales of the table scales.csv. */
  public static List<Scale> known() {
    return KNOWN;
  }

  /**
   * The scale of that name.
   *
   * @throws IllegalArgumentException when the table has none
   */
  public static Scale named(String name) {
    return KNOWN.stream()
        .filter(scale -> scale.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no scale is called " + name));
  }

  private static PitchClassSet steps(List<String> words) {
    return PitchClassSet.of(words.stream().mapToInt(Integer::parseInt).toArray());
  }

  /** Its pitch classes from a root. */
  public PitchClassSet on(NoteName root) {
    return steps.transpose(root.pitchClass());
  }
}
