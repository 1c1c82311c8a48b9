package holdfast.report;

import holdfast.session.Intonation;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Tuning and drift in plain, kind words; nothing where there is nothing to say. */
public final class IntonationSentences {

  /**
   * Under this nobody hears it in a melody: listeners notice 10 to 25 cents at best (from memory).
   */
  private static final double WORTH_SAYING_CENTS = 15;

  private IntonationSentences() {}

  /** The sentences, the more useful first. */
  public static List<String> of(Intonation intonation) {
    List<String> sentences = new ArrayList<>();
    double drift = intonation.driftCents();
    double cents = intonation.cents();
    if (Math.abs(drift) >= WORTH_SAYING_CENTS) {
      sentences.add(
          String.format(
              Locale.ROOT,
              "You drifted %.0f cents %s on the way, as many singers do; your idea kept its shape."
                  + " Listen to the bass when a chorus begins, and you find the pitch again.",
              Math.abs(drift),
              drift < 0 ? "flat" : "sharp"));
    }
    if (Math.abs(cents) >= WORTH_SAYING_CENTS) {
      sentences.add(
          String.format(
              Locale.ROOT,
              "In the middle you stood %.0f cents %s the backing's A = 440 Hz; I judged the notes"
                  + " as you were tuned.",
              Math.abs(cents),
              cents < 0 ? "under" : "over"));
    }
    return sentences;
  }
}
