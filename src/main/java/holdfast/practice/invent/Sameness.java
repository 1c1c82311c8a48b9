package holdfast.practice.invent;

import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether an idea is one that was heard before, in other clothes. The judge of restatement decides,
 * so that a take and an inventing session never disagree.
 *
 * @param context the chords, the key and the kind of player
 */
public record Sameness(Context context) {

  /** From this probability on the clothes are more likely than a new idea. */
  private static final double MORE_LIKELY = 0.5;

  /** So many notes more or less are one ornament. */
  private static final int ONE_ORNAMENT = 1;

  private static final MotifJudge JUDGE = new MotifJudge();

  /**
   * How the new idea comes from the old one, where it does; empty where it is really another. The
   * older of the two may be the one with the ornament.
   */
  public Optional<Clothes> between(List<Note> old, List<Note> fresh) {
    Optional<Clothes> forwards = worn(old, fresh);
    return forwards.isPresent() ? forwards : worn(fresh, old);
  }

  private Optional<Clothes> worn(List<Note> one, List<Note> other) {
    Verdict verdict = JUDGE.compare(Motif.of(one).heard(1), other, context);
    Map<Treatment, Double> chances = verdict.probabilities();
    boolean ornamented = other.size() > one.size() && other.size() - one.size() <= ONE_ORNAMENT;
    double literal = chance(chances, Treatment.LITERAL);
    double moved = chance(chances, Treatment.TRANSPOSED) + chance(chances, Treatment.SEQUENCE);
    double paced = chance(chances, Treatment.AUGMENTED) + chance(chances, Treatment.DIMINISHED);
    double dressed =
        ornamented
            ? chance(chances, Treatment.ORNAMENTED) + chance(chances, Treatment.EXTENDED)
            : 0;
    if (literal + moved + paced + dressed < MORE_LIKELY) {
      return Optional.empty();
    }
    double most = Math.max(Math.max(literal, moved), Math.max(paced, dressed));
    if (most == literal) {
      return Optional.of(Clothes.NONE);
    }
    if (most == moved) {
      boolean octave = verdict.transposition() != 0 && verdict.transposition() % 12 == 0;
      return Optional.of(octave ? Clothes.OCTAVE : Clothes.MOVED);
    }
    return Optional.of(most == paced ? Clothes.PACE : Clothes.ORNAMENT);
  }

  private static double chance(Map<Treatment, Double> chances, Treatment treatment) {
    return chances.getOrDefault(treatment, 0.0);
  }
}
