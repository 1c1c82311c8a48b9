package holdfast.theory;

import java.util.List;

/**
 * How well each of the twelve notes fits a major or a minor key, after a study. The tables are
 * key-profiles.csv, each with its source.
 *
 * @param name of the study: {@code krumhansl-kessler}
 * @param major weights of the twelve steps above a major tonic, in the study's own unit
 * @param minor weights of the twelve steps above a minor tonic, in the study's own unit
 */
public record KeyProfile(String name, List<Double> major, List<Double> minor) {

  private static final List<KeyProfile> KNOWN =
      Table.named("key-profiles.csv").rows().stream()
          .map(row -> new KeyProfile(row.get("name"), weights(row, "major"), weights(row, "minor")))
          .toList();

  /** Copies the lists and checks that they hold twelve weights each. */
  public KeyProfile {
    major = List.copyOf(major);
    minor = List.copyOf(minor);
    if (major.size() != 12 || minor.size() != 12) {
      throw new IllegalArgumentException("a key profile has twelve weights a mode: " + name);
    }
  }

  /** The profiles of the table. */
  public static List<KeyProfile> known() {
    return KNOWN;
  }

  /**
   * The profile of a study.
   *
   * @throws IllegalArgumentException when the table has none of that name
   */
  public static KeyProfile named(String name) {
    return KNOWN.stream()
        .filter(profile -> profile.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no key profile is called " + name));
  }

  private static List<Double> weights(Table.Row row, String column) {
    return row.words(column).stream().map(Double::valueOf).toList();
  }
}
