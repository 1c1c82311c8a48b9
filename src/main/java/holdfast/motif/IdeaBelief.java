package holdfast.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which idea did the player mean, who sang it once and not quite in tune, in time, or whole? The
 * opening is evidence for it, and so is each phrase that restates it: a note that was left out at
 * first and comes in every restatement belongs to the idea. Ideas that differ from the opening by a
 * note are held beside it, each with its probability; verdicts weigh all of them, and what comes
 * later never changes one that was given.
 *
 * <p>ln p(idea | all heard) = ln p(opening | idea) + Σ ln p(phrase | idea), the phrase by any
 * treatment or as new material, as {@link MotifJudge} weighs them. Keys are struck whole and in
 * tune: there the opening is taken as it is.
 */
public final class IdeaBelief {

  /** More than this many ideas side by side say nothing that these do not. */
  private static final int MOST = 4;

  /** An idea e^−7 times as probable as the likeliest is given up. */
  private static final double NEGLIGIBLE = 7;

  /** Earlier phrases that a new candidate is tried on. */
  private static final int REMEMBERED = 10;

  /** From this probability on, a restatement tells where the idea's notes lie. */
  private static final double SURE = 0.8;

  /** A note meant, and the evidence so far for the whole. */
  private record Candidate(Motif idea, double log) {}

  private record Past(List<Note> phrase, Context context) {}

  private final MotifJudge judge;
  private final List<Note> opening;
  private final Context first;
  private final List<Past> past = new ArrayList<>();
  private List<Candidate> candidates;
  private Optional<Runnable> pending = Optional.empty();
  private boolean learned;

  /**
   * Someone has stated an idea, or had it given.
   *
   * @param opening as it was heard, or written
   */
  public IdeaBelief(MotifJudge judge, Motif opening, Context context) {
    this.judge = judge;
    this.opening = opening.notes();
    this.first = context;
    double log = judge.logStatement(opening, opening.notes(), context);
    this.candidates = List.of(new Candidate(opening, log));
  }

  /** The likeliest idea, as far as is known by now. */
  public Motif idea() {
    settle();
    return candidates.get(0).idea();
  }

  /** Whether the idea was ever taken for anything but its opening. */
  public boolean hasLearned() {
    return learned || pending.isPresent();
  }

  /**
   * What became of the idea in the phrase, whichever of the candidates it is; and the phrase tells
   * what the idea is. That is thought over at leisure, in {@link #settle} or before the next
   * question, so that the verdict need not wait for it.
   */
  public Verdict hear(List<Note> phrase, Context context) {
    settle();
    List<MotifJudge.Weighed> weighed = weighed(phrase, context);
    if (context.player() != Player.KEYBOARD && candidates.get(0).idea().hearings() > 0) {
      pending = Optional.of(() -> learn(weighed, phrase, context));
    }
    return mixed(weighed);
  }

  /** Learns from the last phrase that was heard, if that is still to be done. */
  public void settle() {
    Optional<Runnable> work = pending;
    pending = Optional.empty();
    work.ifPresent(Runnable::run);
  }

  private List<MotifJudge.Weighed> weighed(List<Note> phrase, Context context) {
    return candidates.stream().map(c -> judge.weigh(c.idea(), phrase, context)).toList();
  }

  /** Each candidate's probabilities in the measure of its own, this phrase heard. */
  private Verdict mixed(List<MotifJudge.Weighed> weighed) {
    if (weighed.size() == 1) {
      return weighed.get(0).verdict();
    }
    double[] share = shares(weighed);
    Map<Treatment, Double> p = new EnumMap<>(Treatment.class);
    Map<Family, Double> families = new EnumMap<>(Family.class);
    double restates = 0;
    for (int c = 0; c < share.length; c++) {
      Verdict verdict = weighed.get(c).verdict();
      double part = share[c];
      verdict.probabilities().forEach((t, q) -> p.merge(t, part * q, Double::sum));
      families.merge(verdict.family(), part, Double::sum);
      restates += part * verdict.restates();
    }
    Family family =
        families.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    int best = -1;
    for (int c = 0; c < share.length; c++) {
      boolean agrees = weighed.get(c).verdict().family() == family;
      if (agrees && (best < 0 || share[c] > share[best])) {
        best = c;
      }
    }
    return weighed.get(best).verdict().with(p, Math.min(1, restates));
  }

  private double[] shares(List<MotifJudge.Weighed> weighed) {
    double[] share = new double[weighed.size()];
    double top = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < share.length; c++) {
      share[c] = candidates.get(c).log() + weighed.get(c).log();
      top = Math.max(top, share[c]);
    }
    double sum = 0;
    for (int c = 0; c < share.length; c++) {
      share[c] = Math.exp(share[c] - top);
      sum += share[c];
    }
    for (int c = 0; c < share.length; c++) {
      share[c] /= sum;
    }
    return share;
  }

  private void learn(List<MotifJudge.Weighed> weighed, List<Note> phrase, Context context) {
    learned = true;
    List<Candidate> after = new ArrayList<>();
    List<Motif> proposed = new ArrayList<>();
    for (int c = 0; c < weighed.size(); c++) {
      Verdict verdict = weighed.get(c).verdict();
      Motif idea = candidates.get(c).idea();
      for (Motif other : IdeaEdits.of(idea, verdict, phrase)) {
        if (candidates.stream().noneMatch(k -> IdeaEdits.same(k.idea(), other))
            && proposed.stream().noneMatch(k -> IdeaEdits.same(k, other))) {
          proposed.add(other);
        }
      }
      boolean sure = verdict.family() == Family.RESTATED && verdict.confidence() >= SURE;
      Motif sharper = sure ? IdeaEdits.sharper(idea, verdict, phrase) : idea;
      after.add(new Candidate(sharper, candidates.get(c).log() + weighed.get(c).log()));
    }
    past.add(new Past(phrase, context));
    if (past.size() > REMEMBERED) {
      past.remove(0);
    }
    if (!proposed.isEmpty()) {
      after.replaceAll(c -> weighedAgain(c.idea()));
      proposed.forEach(idea -> after.add(weighedAgain(idea)));
    }
    after.sort(Comparator.comparingDouble(Candidate::log).reversed());
    double floor = after.get(0).log() - NEGLIGIBLE;
    candidates = after.stream().filter(c -> c.log() > floor).limit(MOST).toList();
  }

  private Candidate weighedAgain(Motif idea) {
    double log = judge.logStatement(idea, opening, first);
    for (Past heard : past) {
      log += judge.weigh(idea, heard.phrase(), heard.context()).log();
    }
    return new Candidate(idea, log);
  }
}
