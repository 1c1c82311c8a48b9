package holdfast.bench.motif;

import holdfast.motif.Context;
import holdfast.motif.IdeaBelief;
import holdfast.motif.MotifJudge;
import holdfast.motif.Verdict;
import java.util.List;

/**
 * How a judge did on whole takes, whose idea it heard once: share of right treatments and families.
 *
 * @param openingAlone every phrase held against the opening as it was heard
 * @param live as the belief about the idea grew, each phrase judged before the next
 * @param hindsight by what is known of the idea once the take is over
 * @param ideaKnown against the idea as it was meant: nothing can do better
 */
record TakeScore(Shares openingAlone, Shares live, Shares hindsight, Shares ideaKnown) {

  /** Shares of phrases judged right. */
  static final class Shares {
    private int phrases;
    private int treatments;
    private int families;

    private void count(Case c, Verdict verdict) {
      phrases++;
      treatments += c.isTreatment(verdict) ? 1 : 0;
      families += c.isFamily(verdict) ? 1 : 0;
    }

    double treatment() {
      return treatments / (double) phrases;
    }

    double family() {
      return families / (double) phrases;
    }

    @Override
    public String toString() {
      return String.format(
          java.util.Locale.ROOT, "treatment %.3f  family %.3f", treatment(), family());
    }
  }

  static TakeScore of(List<LabelledSet.Take> takes) {
    MotifJudge judge = new MotifJudge();
    TakeScore score = new TakeScore(new Shares(), new Shares(), new Shares(), new Shares());
    for (LabelledSet.Take take : takes) {
      Context context = take.phrases().get(0).context();
      IdeaBelief belief = new IdeaBelief(judge, take.opening(), context);
      for (Case c : take.phrases()) {
        score.openingAlone.count(c, judge.compare(take.opening(), c.phrase(), c.context()));
        score.live.count(c, belief.hear(c.phrase(), c.context()));
        score.ideaKnown.count(c, judge.compare(take.written(), c.phrase(), c.context()));
      }
      for (Case c : take.phrases()) {
        score.hindsight.count(c, judge.compare(belief.idea(), c.phrase(), c.context()));
      }
    }
    return score;
  }
}
