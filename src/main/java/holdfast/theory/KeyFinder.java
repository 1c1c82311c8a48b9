package holdfast.theory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which key do these notes speak of? The method is Krumhansl and Schmuckler's: correlate how long
 * each pitch class sounds with a profile on each of the 24 tonics (Krumhansl, "Cognitive
 * Foundations of Musical Pitch", 1990).
 *
 * @param profile whose weights are used
 */
public record KeyFinder(KeyProfile profile) {

  /** The finder with the profiles of Krumhansl and Kessler, 1982. */
  public static final KeyFinder KRUMHANSL_KESSLER =
      new KeyFinder(KeyProfile.named("krumhansl-kessler"));

  /**
   * A key, and how well the notes agree with it.
   *
   * @param key on the tonic with the smaller signature
   * @param correlation Pearson's, -1 to 1
   */
  public record Estimate(Key key, double correlation) {}

  /**
   * The 24 major and minor keys, the likeliest first.
   *
   * @param weights how much each of the twelve pitch classes sounds, from C, in any unit: beats,
   *     seconds or counts
   * @return empty when all weights are alike, so that no key can be told
   */
  public List<Estimate> rank(List<Double> weights) {
    if (weights.size() != 12) {
      throw new IllegalArgumentException("there are twelve pitch classes, not " + weights.size());
    }
    if (weights.stream().distinct().count() == 1) {
      return List.of();
    }
    List<Estimate> keys = new ArrayList<>();
    for (int tonic = 0; tonic < 12; tonic++) {
      keys.add(estimate(weights, tonic, Mode.MAJOR, profile.major()));
      keys.add(estimate(weights, tonic, Mode.MINOR, profile.minor()));
    }
    keys.sort(Comparator.comparingDouble(Estimate::correlation).reversed());
    return List.copyOf(keys);
  }

  private static Estimate estimate(
      List<Double> weights, int tonic, Mode mode, List<Double> expected) {
    List<Double> fromTonic =
        IntStream.range(0, 12).mapToObj(step -> weights.get((step + tonic) % 12)).toList();
    Key flat = new Key(NoteName.plain(tonic, false), mode);
    Key sharp = new Key(NoteName.plain(tonic, true), mode);
    Key key = Math.abs(sharp.fifths()) < Math.abs(flat.fifths()) ? sharp : flat;
    return new Estimate(key, correlation(fromTonic, expected));
  }

  private static double correlation(List<Double> a, List<Double> b) {
    double meanA = mean(a);
    double meanB = mean(b);
    double both = 0;
    double squaresA = 0;
    double squaresB = 0;
    for (int i = 0; i < a.size(); i++) {
      double x = a.get(i) - meanA;
      double y = b.get(i) - meanB;
      both += x * y;
      squaresA += x * x;
      squaresB += y * y;
    }
    return both / Math.sqrt(squaresA * squaresB);
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
  }
}
