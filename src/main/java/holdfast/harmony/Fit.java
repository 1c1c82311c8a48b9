package holdfast.harmony;

import java.util.List;
import java.util.Optional;

/**
 * How well a phrase, or a chorus, sits in its chords.
 *
 * <p>The score joins two answers, each a mean over the notes in which long, accented and landing
 * notes count more: how the trade weighs them ({@link TradeWeights}, which know resolutions), and
 * how usual they are in expert solos ({@link NotesOverChords}). It is never a share of chord tones:
 * of what experts play, half is chord tones.
 *
 * @param score 0 to 1; expert solos lie around .86, the same solos over wrong chords around .74
 * @param word the score in a word: three words for a phrase, which holds little evidence, five for
 *     a chorus
 */
public record Fit(double score, FitWord word) {

  /**
   * Score = BASE + ODDS · mean log-odds + TRADE · mean trade weight. In a simulation from the
   * counts the odds tell right chords from wrong ones best, and the trade's weights cost next to
   * nothing up to a third of the odds' weight; BASE and the scale are set so that experts and wrong
   * chords come out at the means that the trade weights alone were measured to give (.862 and
   * .739).
   */
  private static final double BASE = 0.711;

  private static final double ODDS = 0.39;
  private static final double TRADE = 0.117;

  /** From here up the score bends towards 1, which nothing reaches: the best is never exhausted. */
  private static final double BEND = 0.9;

  /** A line with this many notes is judged as a phrase; five notes tell right from wrong poorly. */
  private static final int PHRASE_NOTES = 16;

  /** From this many notes on a line is judged as a chorus. */
  private static final int CHORUS_NOTES = 64;

  /**
   * Bounds of the words for a phrase: a phrase sits from the middle between the lower quarter (.82)
   * and the median (.90) of experts' five-note windows, and pulls against below their lower tenth.
   */
  private static final double PHRASE_SITS = 0.85;

  private static final double PHRASE_RUBS = 0.694;

  /** Checks the range. */
  public Fit {
    if (!(score >= 0 && score <= 1)) {
      throw new IllegalArgumentException("a fit's score must be 0 to 1, not " + score);
    }
  }

  /**
   * The fit of notes that belong together: one phrase, or all phrases of a chorus; empty where no
   * chord sounds under any.
   */
  public static Optional<Fit> of(List<HeardNote> notes) {
    double weight = 0;
    double sits = 0;
    double odds = 0;
    int judged = 0;
    boolean held = false;
    for (HeardNote n : notes) {
      weight += n.weight();
      sits += n.weight() * n.sits();
      odds += n.weight() * n.logOdds();
      judged += n.weight() > 0 ? 1 : 0;
      held |= n.role() == NoteRole.HELD_AGAINST;
    }
    if (judged == 0) {
      return Optional.empty();
    }
    double score = bent(BASE + ODDS * odds / weight + TRADE * sits / weight);
    return Optional.of(new Fit(score, word(score, judged, held)));
  }

  /** Whether it sits, mostly or better: what a restatement has to do to count as fitting. */
  public boolean sits() {
    return word.compareTo(FitWord.MOSTLY_SITS) <= 0;
  }

  private static double bent(double raw) {
    double room = 1 - BEND;
    return raw <= BEND ? Math.max(0, raw) : BEND + room * (1 - Math.exp(-(raw - BEND) / room));
  }

  private static FitWord word(double score, int notes, boolean held) {
    if (notes < PHRASE_NOTES) {
      if (score < PHRASE_RUBS) {
        return FitWord.PULLS_AGAINST;
      }
      // One note held against the chord is what a listener remembers of a short phrase.
      return score < PHRASE_SITS || held ? FitWord.RUBS : FitWord.SITS;
    }
    double doublings = Math.log((double) notes / PHRASE_NOTES);
    double length = Math.min(1, doublings / Math.log((double) CHORUS_NOTES / PHRASE_NOTES));
    for (FitWord word : FitWord.values()) {
      if (score >= word.leastScore(length)) {
        return word;
      }
    }
    return FitWord.PULLS_AGAINST;
  }
}
