package holdfast.motif;

/**
 * How likely is a time between two onsets: as the one that was meant, or as any that a player of
 * this music might choose? All times are in pulses of the idea.
 *
 * <p>A time that was meant is followed with Student's t distribution of 4 degrees of freedom: human
 * timing is near normal, with a few large misses that must not break a verdict. Its spread joins a
 * constant part (motor noise) and a part that grows with the interval (tempo that drifts, rubato).
 * The variance of that distribution is twice the square of its scale, which leaves room for an idea
 * that was played itself.
 *
 * <p>A time of new material repeats the one before, or is one of the simple note values over the
 * idea's pulse, or, rarely, anything. So a rhythm of even notes, that anybody might play, says
 * little for the idea; an unusual rhythm kept says much.
 */
final class RhythmModel {

  /** Tempo drift from one note to the next, as a share of the interval; 3 to 5 % from memory. */
  private static final double DRIFT = 0.03;

  /** ln of the t density's constant: Γ(5/2) / (Γ(2) √(4π)). */
  private static final double LN_T4 = Math.log(1.3293403881791370 / Math.sqrt(4 * Math.PI));

  /** New material: how often a time repeats the one before. Common practice, no source. */
  private static final double SAME_AGAIN = 0.4;

  /** New material: how often a time that does not repeat is a simple note value. */
  private static final double NOTE_VALUE = 0.85;

  /** Note values in pulses, and how often new material takes each. Common practice, no source. */
  private static final double[] VALUES = {
    0.25, 1 / 3.0, 0.5, 2 / 3.0, 0.75, 1, 4 / 3.0, 1.5, 2, 3, 4, 6, 8
  };

  private static final double[] SHARES = {
    0.02, 0.02, 0.07, 0.02, 0.03, 0.40, 0.02, 0.06, 0.20, 0.08, 0.06, 0.01, 0.01
  };

  /** Anything: log-normal about one and a half pulses, four fifths of an e-fold wide. */
  private static final double FREE_MEDIAN = 1.5;

  private static final double FREE_WIDTH = 0.8;

  private final double spread;
  private final double[] variances = new double[VALUES.length];
  private final double[] widths = new double[VALUES.length];

  /**
   * @param player whose timing
   * @param meanStep the idea's mean time between onsets, in pulses
   */
  RhythmModel(Player player, double meanStep) {
    this.spread = player.timingShare() * meanStep;
    for (int v = 0; v < VALUES.length; v++) {
      variances[v] = variance(VALUES[v]);
      widths[v] = Math.sqrt(variances[v]);
    }
  }

  /** ln density of playing {@code step} where {@code meant} was meant. */
  double meant(double step, double meant) {
    return meaning(meant).log(step);
  }

  /** A time that is meant, for one who asks about many that were played. */
  Meaning meaning(double meant) {
    double variance = variance(meant);
    return new Meaning(meant, variance, LN_T4 - 0.5 * Math.log(variance));
  }

  /** ln densities about a time that is meant. */
  record Meaning(double meant, double variance, double top) {
    double log(double step) {
      double miss = step - meant;
      return top - 2.5 * Math.log(1 + miss * miss / (4 * variance));
    }
  }

  /** ln density of {@code step} in new material, where {@code before} (or 0: none) went before. */
  double free(double step, double before) {
    double values = 0;
    for (int v = 0; v < VALUES.length; v++) {
      values += SHARES[v] * near(step, VALUES[v], variances[v], widths[v]);
    }
    double anything = 0;
    if (step > 0) {
      double z = Math.log(step / FREE_MEDIAN) / FREE_WIDTH;
      anything = Math.exp(-0.5 * z * z) / (step * FREE_WIDTH * Math.sqrt(2 * Math.PI));
    }
    double first = NOTE_VALUE * values + (1 - NOTE_VALUE) * anything;
    if (before <= 0) {
      return Math.log(first + TINY);
    }
    // Two noisy times meet here, so that the spread is √2 of one.
    double variance = variance(before) * Math.sqrt(2) * Math.sqrt(2);
    double again = near(step, before, variance, Math.sqrt(variance));
    return Math.log(SAME_AGAIN * again + (1 - SAME_AGAIN) * first + TINY);
  }

  private static double near(double step, double value, double variance, double width) {
    double miss = step - value;
    double y = 1 + miss * miss / (4 * variance);
    return T4 / (width * y * y * Math.sqrt(y));
  }

  private double variance(double meant) {
    double drift = DRIFT * meant;
    return spread * spread + drift * drift;
  }

  private static final double T4 = Math.exp(LN_T4);

  /** Keeps the logarithm finite for two notes at one moment. */
  private static final double TINY = 1e-9;
}
