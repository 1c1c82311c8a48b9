package holdfast.motif;

import java.util.EnumMap;
import java.util.Map;

/**
 * How likely each treatment is before the phrase is heard. The start is common practice among
 * players who carry an idea: restatements first, then fragments and extensions, mirror forms
 * seldom. A session may lean them towards what this player has done so far: see {@link #after}.
 */
public final class Priors {

  /** Before anything is known of the player. Common practice, no source. */
  public static final Priors START = new Priors(start());

  /** How many phrases' worth of evidence the start is: after so many, half is the player's own. */
  private static final double START_WEIGHT = 12;

  private final Map<Treatment, Double> share;

  private Priors(Map<Treatment, Double> share) {
    this.share = share;
  }

  private static Map<Treatment, Double> start() {
    Map<Treatment, Double> share = new EnumMap<>(Treatment.class);
    share.put(Treatment.LITERAL, 0.13);
    share.put(Treatment.TRANSPOSED, 0.09);
    share.put(Treatment.SEQUENCE, 0.13);
    share.put(Treatment.RHYTHM_KEPT, 0.03);
    share.put(Treatment.CONTOUR_KEPT, 0.07);
    share.put(Treatment.INVERTED, 0.04);
    share.put(Treatment.RETROGRADE, 0.03);
    share.put(Treatment.AUGMENTED, 0.04);
    share.put(Treatment.DIMINISHED, 0.04);
    share.put(Treatment.FRAGMENT, 0.06);
    share.put(Treatment.EXTENDED, 0.05);
    share.put(Treatment.ORNAMENTED, 0.05);
    share.put(Treatment.NEW, 0.24);
    return share;
  }

  /** Share of a treatment, more than 0; all shares sum to 1. */
  public double share(Treatment treatment) {
    return share.get(treatment);
  }

  /**
   * The shares after some phrases of this player's were judged: the start counts as twelve phrases,
   * each judged phrase as one, spread over the treatments as its probabilities are.
   *
   * @param judged the verdicts so far
   */
  public static Priors after(Iterable<Verdict> judged) {
    Map<Treatment, Double> sum = new EnumMap<>(Treatment.class);
    double total = START_WEIGHT;
    for (Treatment t : Treatment.values()) {
      sum.put(t, START_WEIGHT * START.share(t));
    }
    for (Verdict verdict : judged) {
      verdict.probabilities().forEach((t, p) -> sum.merge(t, p, Double::sum));
      total++;
    }
    double all = total;
    sum.replaceAll((t, p) -> p / all);
    return new Priors(sum);
  }
}
