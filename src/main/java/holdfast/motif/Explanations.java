package holdfast.motif;

import java.util.Arrays;
import java.util.List;

/**
 * All that may account for a phrase, given an idea: every treatment with the parameters that the
 * phrase itself proposes, each with ln(prior × likelihood). New material is the yardstick among
 * them.
 */
final class Explanations {

  /** New phrases are about as long as the idea: two notes more or less are an e-fold rarer. */
  private static final double LENGTH_REACH = 2;

  /** Longer phrases than this beyond the idea's length share what little is left. */
  private static final int MUCH_LONGER = 30;

  /** ln of the sum of all lengths' weights, by the idea's length. */
  private static final double[] LN_LENGTHS = new double[MotifJudge.MOST_NOTES + 1];

  static {
    for (int n = 0; n < LN_LENGTHS.length; n++) {
      double sum = 0;
      for (int length = 1; length <= n + MUCH_LONGER; length++) {
        sum += Math.exp(-Math.abs(length - n) / LENGTH_REACH);
      }
      LN_LENGTHS[n] = Math.log(sum);
    }
  }

  private Explanations() {}

  /** Everything that was weighed and counts; new material is always among it. */
  static List<Explanation> of(Comparison c) {
    c.collected.keep(newMaterial(c));
    if (c.isFarLonger()) {
      new ReshapedForms(c, List.of(c.literal)).repeated();
      return c.collected.all();
    }
    List<PitchMap> carried = c.carried();
    new CarriedForms(c, carried).weigh();
    new TurnedForms(c).weigh();
    new StretchedForms(c, carried).weigh();
    new ReshapedForms(c, carried).weigh();
    return c.collected.all();
  }

  /** New material first, then the idea in its own rhythm, moved or not. */
  static List<Explanation> inPlace(Comparison c) {
    c.collected.keep(newMaterial(c));
    new CarriedForms(c, c.carried()).plain();
    return c.collected.all();
  }

  /** New material first, then the forms that keep the idea's rhythm. */
  static List<Explanation> inOwnRhythm(Comparison c) {
    c.collected.keep(newMaterial(c));
    if (!c.isFarLonger()) {
      new CarriedForms(c, c.carried()).weigh();
    }
    return c.collected.all();
  }

  private static Explanation newMaterial(Comparison c) {
    double log = c.logPrior(Treatment.NEW) + c.background.logTotal() + lengthAsNew(c.n, c.m);
    Explanation.Redo unmatched =
        () -> {
          int[] ideaOf = new int[c.m];
          Arrays.fill(ideaOf, -1);
          return ideaOf;
        };
    return new Explanation(Treatment.NEW, log, c.literal, 1, false, unmatched, "");
  }

  /** ln share of a phrase's length among new phrases, given the idea's. */
  private static double lengthAsNew(int n, int m) {
    return -Math.abs(m - n) / LENGTH_REACH - LN_LENGTHS[n];
  }
}
