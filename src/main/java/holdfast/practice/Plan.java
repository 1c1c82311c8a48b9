package holdfast.practice;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.chart.ChordSpan;
import holdfast.harmony.Fit;
import holdfast.melody.Note;
import holdfast.motif.Treatment;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What to practise next, after a take: one to three steps, what is needed most first. A pure
 * function of the judged take.
 *
 * @param steps in order
 */
public record Plan(List<Step> steps) {

  /** More than this nobody does. */
  private static final int MOST_STEPS = 3;

  /** What went well may go a little faster. */
  private static final double FASTER = 1.1;

  /** So few phrases after the idea say little yet. */
  private static final int FEW_PHRASES = 3;

  /** From this share of carried phrases on the idea is held through a chorus. */
  private static final double HELD = 0.75;

  /** So many carried phrases that rub say that the idea is not bent where it has to be. */
  private static final int RUBBING = 2;

  /** Copies the steps and checks that there is one. */
  public Plan {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a plan has at least one step");
    }
  }

  /**
   * The plan after a take.
   *
   * @param chart the chart's name or file, as it is opened
   */
  public static Plan after(JudgedTake take, String chart) {
    return new Draft(take, chart).plan();
  }

  /** The plan while it is being made. */
  private static final class Draft {
    private final JudgedTake take;
    private final String chart;
    private final double tempo;
    private final Optional<List<Note>> idea;
    private final List<Step> steps = new ArrayList<>();

    Draft(JudgedTake take, String chart) {
      this.take = take;
      this.chart = chart;
      this.tempo = take.setting().beats().openingTempo();
      this.idea =
          take.idea()
              .map(
                  motif ->
                      take.setting().givenIdea().isPresent()
                          ? WrittenIdea.ofGiven(motif.notes(), take.setting().metre())
                          : WrittenIdea.ofPlayed(motif.notes(), take.setting().metre()));
    }

    Plan plan() {
      int phrases = take.counts().phrases();
      int carried = take.counts().carried();
      if (idea.isEmpty()) {
        add(
            Way.SING_BACK,
            Optional.empty(),
            1,
            "No idea was heard yet; say a small one, and I" + " show you where it can go.");
        return new Plan(steps);
      }
      HardBars.of(take)
          .ifPresent(
              hard ->
                  add(Way.CLIMB, Optional.of(hard.bars()), Exercise.SLOWER_AT_FIRST, hard.why()));
      long rubbing = take.phrases().stream().filter(Draft::keptButRubs).count();
      if (rubbing >= RUBBING) {
        add(
            Way.SING_BACK,
            Optional.empty(),
            1,
            rubbing
                + " times you kept the idea where its chord asked it to bend; hear it bent, and"
                + " sing that back.");
      }
      if (phrases < FEW_PHRASES) {
        add(
            Way.HEAD_START,
            Optional.empty(),
            1,
            "You said your idea and hardly went on with it;"
                + " I begin for you, and you carry it from there.");
      } else if (carried < HELD * phrases) {
        add(
            Way.SWAP,
            Optional.empty(),
            1,
            carried
                + " of "
                + phrases
                + " phrases carried the idea; with me in between it stays in your ear.");
      } else {
        boolean alwaysTheSame = alwaysTheSame();
        add(
            alwaysTheSame ? Way.GUESS_NEXT : Way.HEAD_START,
            Optional.empty(),
            alwaysTheSame ? 1 : FASTER,
            alwaysTheSame
                ? "You said the idea the same way each time; hear how it can bend, and guess what"
                    + " comes."
                : carried
                    + " of "
                    + phrases
                    + " phrases carried the idea; try it a little faster.");
        add(
            Way.TWELVE_KEYS,
            Optional.empty(),
            1,
            "You hold on to it here; the next door is the" + " same idea in every key.");
      }
      return new Plan(steps.subList(0, Math.min(MOST_STEPS, steps.size())));
    }

    private void add(Way way, Optional<BarRange> bars, double pace, String why) {
      double wanted = Math.rint(tempo * pace);
      double playable = Math.max(Arrangement.SLOWEST, Math.min(Arrangement.FASTEST, wanted));
      steps.add(new Step(way, chart, bars, playable, idea, why));
    }

    private static boolean keptButRubs(JudgedPhrase phrase) {
      return !phrase.statesTheIdea()
          && phrase.carries()
          && !phrase.harmony().fit().map(Fit::sits).orElse(true);
    }

    private boolean alwaysTheSame() {
      List<JudgedPhrase> after = take.phrases().stream().filter(p -> !p.statesTheIdea()).toList();
      long chords =
          after.stream().map(JudgedPhrase::mainChord).map(ChordSpan::harmony).distinct().count();
      return chords > 1
          && after.stream().allMatch(p -> p.verdict().treatment() == Treatment.LITERAL);
    }
  }
}
