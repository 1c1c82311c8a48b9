package holdfast.practice.invent;

import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

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

  private static final int OCTAVE = 12;

  private static final MotifJudge JUDGE = new MotifJudge();

  /**
   * How the new idea comes from the old one, where it does; empty where it is really another. The
   * older of the two may be the one with the ornament.
   */
  public Optional<Clothes> between(List<Note> old, List<Note> fresh) {
    Optional<Clothes> forwards = worn(old, fresh);
    return forwards.isPresent() ? forwards : worn(fresh, old).map(Clothes::reversed);
  }

  private Optional<Clothes> worn(List<Note> one, List<Note> other) {
    Verdict verdict = JUDGE.compare(Motif.of(one).heard(1), other, context);
    Map<Treatment, Double> chances = verdict.probabilities();
    // A voice is heard with a note too many or too few now and then.
    int misheard = context.player() == Player.VOICE ? 1 : 0;
    boolean ornamented = Math.abs(other.size() - one.size() - ONE_ORNAMENT) <= misheard;
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
    if (most == paced) {
      boolean slower =
          chance(chances, Treatment.AUGMENTED) >= chance(chances, Treatment.DIMINISHED);
      return Optional.of(slower ? Clothes.SLOWER : Clothes.FASTER);
    }
    if (one.size() != other.size()) {
      return Optional.of(other.size() > one.size() ? Clothes.ADDED : Clothes.LEFT_OUT);
    }
    return Optional.of(most == literal ? Clothes.NONE : place(one, other));
  }

  /** Where an idea of as many notes went. */
  private static Clothes place(List<Note> one, List<Note> other) {
    int[] steps =
        IntStream.range(0, one.size())
            .map(i -> other.get(i).pitch() - one.get(i).pitch())
            .toArray();
    int up = (int) Arrays.stream(steps).filter(step -> step > 0).count();
    int down = (int) Arrays.stream(steps).filter(step -> step < 0).count();
    if (up == steps.length || down == steps.length) {
      boolean octave = Arrays.stream(steps).allMatch(step -> step % OCTAVE == 0);
      return up > 0
          ? octave ? Clothes.OCTAVE_UP : Clothes.HIGHER
          : octave ? Clothes.OCTAVE_DOWN : Clothes.LOWER;
    }
    return Clothes.SKEWED;
  }

  private static double chance(Map<Treatment, Double> chances, Treatment treatment) {
    return chances.getOrDefault(treatment, 0.0);
  }
}
