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

  /** A played idea of more notes was played without a rest, and is no small idea. */
  public static final int MOST_NOTES = 16;

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
   * @param key the key that the chart was moved to, as it is typed; empty for its own
   */
  public static Plan after(JudgedTake take, String chart, Optional<String> key) {
    return new Draft(take, chart, key).plan();
  }

  /** The plan after a take over a chart in its own key. */
  public static Plan after(JudgedTake take, String chart) {
    return after(take, chart, Optional.empty());
  }

  /**
   * The plan after a lesson. Where it was played over the chart as it stands, it is that of any
   * take; where the coach made a chart of its own, what was reached decides.
   *
   * @param take what the student played
   * @param outcomes what came of each passage
   * @param chart the chart's name or file, as it is opened
   */
  public static Plan after(
      Exercise exercise,
      JudgedTake take,
      List<Outcome> outcomes,
      String chart,
      Optional<String> key) {
    Draft draft = new Draft(take, chart, key);
    return switch (exercise.way()) {
      case HEAD_START, SWAP -> draft.plan();
      case CLIMB -> draft.afterClimb(exercise, outcomes);
      case SING_BACK, GUESS_NEXT, TWELVE_KEYS -> draft.afterLesson(exercise, outcomes);
    };
  }

  /** The plan while it is being made. */
  private static final class Draft {
    private final JudgedTake take;
    private final String chart;
    private final Optional<String> key;
    private final double tempo;
    private final Optional<List<Note>> idea;
    private final List<Step> steps = new ArrayList<>();

    Draft(JudgedTake take, String chart, Optional<String> key) {
      this.take = take;
      this.key = key;
      this.chart = chart;
      this.tempo = take.setting().beats().openingTempo();
      this.idea =
          take.idea()
              .map(
                  motif ->
                      take.setting().givenIdea().isPresent()
                          ? WrittenIdea.ofGiven(motif.notes(), take.setting().metre())
                          : WrittenIdea.ofPlayed(motif.notes(), take.setting().metre()))
              .filter(
                  notes -> take.setting().givenIdea().isPresent() || notes.size() <= MOST_NOTES);
    }

    Plan plan() {
      int phrases = take.counts().phrases();
      int carried = take.counts().carried();
      if (idea.isEmpty()) {
        add(
            Way.SING_BACK,
            Optional.empty(),
            1,
            "No small idea was heard yet; say four or five notes and rest, and I show you where it"
                + " can go.");
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
            carried == 0
                ? "The idea did not come back yet; with me in between it stays in your ear."
                : carried
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

    /** Up again where it did not hold; where it did, the whole chart. */
    Plan afterClimb(Exercise exercise, List<Outcome> outcomes) {
      boolean held = !outcomes.isEmpty() && outcomes.get(outcomes.size() - 1).reached();
      if (held) {
        add(
            Way.HEAD_START,
            Optional.empty(),
            1,
            "These bars hold; take them with you through the whole chart.");
      } else {
        add(
            Way.CLIMB,
            exercise.bars(),
            Exercise.SLOWER_AT_FIRST,
            "These bars do not hold yet; slower is no step back.");
      }
      return new Plan(steps);
    }

    Plan afterLesson(Exercise exercise, List<Outcome> outcomes) {
      long reached = outcomes.stream().filter(Outcome::reached).count();
      if (outcomes.isEmpty() || reached < HELD * outcomes.size()) {
        add(
            exercise.way(),
            exercise.bars(),
            Exercise.SLOWER_AT_FIRST,
            reached + " of " + outcomes.size() + " times it came out; once more, slower.");
      } else {
        add(
            exercise.way() == Way.GUESS_NEXT ? Way.SWAP : Way.HEAD_START,
            exercise.bars(),
            1,
            reached + " of " + outcomes.size() + " times it came out; now carry it yourself.");
      }
      return new Plan(steps);
    }

    private void add(Way way, Optional<BarRange> bars, double pace, String why) {
      double wanted = Math.rint(tempo * pace);
      double playable = Math.max(Arrangement.SLOWEST, Math.min(Arrangement.FASTEST, wanted));
      steps.add(new Step(way, chart, key, bars, playable, idea, why));
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
