package holdfast.motif;

import holdfast.melody.Note;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.List;

/**
 * What did the player do with the idea in this phrase? Every explanation (treatment and its
 * parameters) is weighed by how likely the phrase would be if the player had meant it; new material
 * is one of them. Bayes' rule turns the weights into probabilities, which a temperature calibrates.
 *
 * <p>ln p(phrase | treatment) = ln Σ over its parameters of p(parameters) · p(phrase | idea,
 * treatment, parameters), where the last factor is a product over the notes of the best alignment:
 * the pitch that was played where another was meant ({@link PitchMaps}), the time that was taken
 * where another was meant ({@link RhythmModel}), notes left out and put in. Under new material it
 * is a product over the notes of what melodies do ({@link Background}).
 *
 * <p>Pure and thread-safe. Loudness plays no part; neither does tempo, since times are told in
 * pulses of the idea.
 */
public final class MotifJudge {

  /**
   * Divides the ln weights before they become probabilities: explanations are less independent of
   * each other, and players less like the model, than the model thinks. Fitted on the tuning half
   * of the labelled set.
   */
  private static final double TEMPERATURE = 1.05;

  /** Nobody carries more notes than this as one idea. */
  public static final int MOST_NOTES = 128;

  /** Far more than sums of doubles are off. */
  private static final double ROUNDING = 1e-6;

  private final Grounds grounds = new Grounds();
  private final Scales scales = new Scales();

  /**
   * What became of the idea in the phrase.
   *
   * @throws IllegalArgumentException where the idea has more than {@link #MOST_NOTES} notes, or the
   *     phrase none
   */
  public Verdict compare(Motif idea, List<Note> phrase, Context context) {
    return weigh(idea, phrase, context).verdict();
  }

  /**
   * A verdict, and how well the idea accounts for the phrase.
   *
   * @param verdict what became of the idea
   * @param log ln probability of the phrase, given the idea, all treatments and new material
   *     together
   */
  record Weighed(Verdict verdict, double log) {}

  Weighed weigh(Motif idea, List<Note> phrase, Context context) {
    double pulse = Line.pulse(idea.notes());
    Comparison comparison = comparison(idea, phrase, context, pulse);
    List<Explanation> all = Explanations.of(comparison);
    Verdict verdict =
        new Weighing(comparison, all, TEMPERATURE).verdict(pulse, context.beatsPerBar());
    double top = all.stream().mapToDouble(Explanation::log).max().orElseThrow();
    double sum = all.stream().mapToDouble(e -> Math.exp(e.log() - top)).sum();
    // Densities of times are told in pulses, which differ from idea to idea.
    return new Weighed(verdict, top + Math.log(sum) - (phrase.size() - 1) * Math.log(pulse));
  }

  /**
   * Whether {@link #compare} may call the phrase restated: where this is false it never does.
   * Quicker than a verdict, since all that makes a phrase restated is weighed against new material
   * alone.
   */
  boolean mayBeRestated(Motif idea, List<Note> phrase, Context context) {
    Comparison c = comparison(idea, phrase, context, Line.pulse(idea.notes()));
    boolean again = c.isFarLonger() || (c.m > c.n && c.m % c.n == 0);
    if (again || (c.m == c.n && Weighing.nearPlace(c.idea, c.phrase))) {
      return true;
    }
    return odds(Explanations.inPlace(c)) >= 2 - ROUNDING;
  }

  /** Of all explanations together against the first of them. */
  private static double odds(List<Explanation> all) {
    double first = all.get(0).log();
    double odds = 0;
    for (Explanation e : all) {
      odds += Math.exp((e.log() - first) / TEMPERATURE);
    }
    return odds;
  }

  /** ln probability of hearing {@code heard} from one who set out to play {@code meant}. */
  double logStatement(Motif meant, List<Note> heard, Context context) {
    double pulse = Line.pulse(meant.notes());
    Comparison c = comparison(meant, heard, context, pulse);
    double log = c.aligner.align(c.literal.notes(), new double[0], c.plain);
    return log - (heard.size() - 1) * Math.log(pulse);
  }

  /**
   * ln of the share of new material among what may account for the phrase, 0 or less; only forms in
   * the idea's own rhythm are weighed against it. Quicker than a verdict.
   */
  double logNew(Motif idea, List<Note> phrase, Context context) {
    Comparison comparison = comparison(idea, phrase, context, Line.pulse(idea.notes()));
    return -Math.log(odds(Explanations.inOwnRhythm(comparison)));
  }

  /** All notes of a take as new material, told in the idea's pulses. */
  Background background(Motif idea, List<Note> take, Context context) {
    return comparison(idea, take, context, Line.pulse(idea.notes())).background;
  }

  private Comparison comparison(Motif idea, List<Note> phrase, Context context, double pulse) {
    Phrases.check("a phrase", phrase);
    if (idea.notes().size() > MOST_NOTES) {
      throw new IllegalArgumentException(
          "an idea is small: at most " + MOST_NOTES + " notes, not " + idea.notes().size());
    }
    return new Comparison(
        Line.of(idea.notes(), pulse),
        grounds.under(idea, context),
        Line.of(phrase, pulse),
        grounds.under(phrase, context),
        context.key().map(Key::scale).orElse(PitchClassSet.EMPTY),
        context.player(),
        idea.spreading(),
        context.priors(),
        scales);
  }
}
