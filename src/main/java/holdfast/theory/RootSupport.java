package holdfast.theory;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which note of a sound does the ear take for its root? Parncutt's model: every note supports the
 * roots that lie a root-support interval below it. Parncutt, "Revision of Terhardt's
 * psychoacoustical model of the root(s) of a musical chord", Music Perception 6, 1988, and its
 * weights of 2006.
 *
 * @param support how much a note supports the root that lies so many semitones below it, from 0 to
 *     11, in the unit of the weights
 */
public record RootSupport(List<Double> support) {

  /**
   * Unison 1, fifth 1/2, major third 1/3, minor seventh 1/4, major second 1/5, minor third 1/10.
   */
  public static final RootSupport PARNCUTT_1988 =
      new RootSupport(List.of(1., 0., 1 / 5., 1 / 10., 1 / 3., 0., 0., 1 / 2., 0., 0., 1 / 4., 0.));

  /** Unison 10, fifth 5, major third 3, minor seventh 2, major second 1. */
  public static final RootSupport PARNCUTT_2006 =
      new RootSupport(List.of(10., 0., 1., 0., 3., 0., 0., 5., 0., 0., 2., 0.));

  /** Copies the list and checks that it holds twelve numbers. */
  public RootSupport {
    support = List.copyOf(support);
    if (support.size() != 12) {
      throw new IllegalArgumentException("twelve intervals support a root, not " + support.size());
    }
  }

  /** How much each of the twelve pitch classes, from C, is supported as a root of these notes. */
  public List<Double> weights(PitchClassSet notes) {
    return IntStream.range(0, 12)
        .mapToObj(
            root ->
                notes.stream()
                    .mapToDouble(note -> support.get(Math.floorMod(note - root, 12)))
                    .sum())
        .toList();
  }

  /**
   * How unsure the ear is of the root: √(all support ÷ the most that one root has), 1 where only
   * one note is supported at all. About 2 for a major triad, nearly 3 for a diminished seventh (the
   * paper of 1988, Table 4).
   */
  public double ambiguity(PitchClassSet notes) {
    List<Double> weights = weights(notes);
    double most = weights.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    return Math.sqrt(weights.stream().mapToDouble(Double::doubleValue).sum() / most);
  }

  /** The pitch class with the most support, the lowest of equals; 0 to 11. */
  public int root(PitchClassSet notes) {
    List<Double> weights = weights(notes);
    return IntStream.range(0, 12)
        .boxed()
        .max(
            Comparator.comparingDouble((Integer root) -> weights.get(root))
                .thenComparing(Comparator.reverseOrder()))
        .orElseThrow();
  }
}
