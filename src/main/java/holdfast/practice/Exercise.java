package holdfast.practice;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.carry.PitchRange;
import holdfast.chart.Chart;
import holdfast.melody.Note;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is practised, and in which way.
 *
 * @param way how
 * @param chart over which changes
 * @param feel how the backing plays them
 * @param tempo in beats a minute, 30 to 240; in a climb the one to begin at
 * @param bars which bars of the form; empty for all
 * @param range where the coach's line and ideas may lie: that of the student's voice or instrument
 * @param idea the idea, in beats from its own bar line; without one the student brings one where
 *     the way lets them begin, and else the coach does
 * @param coachChords in a head start over how many chords the coach says the idea, 1 or 2
 * @param rounds how many times round; empty for as many as are usual in this way
 */
public record Exercise(
    Way way,
    Chart chart,
    Feel feel,
    double tempo,
    Optional<BarRange> bars,
    PitchRange range,
    Optional<List<Note>> idea,
    int coachChords,
    OptionalInt rounds) {

  /** Most chords over which a coach begins: then it is the student's. */
  public static final int MOST_COACH_CHORDS = 2;

  /** A climb begins this much slower than it means to arrive, as a share. */
  public static final double SLOWER_AT_FIRST = 0.8;

  /** Copies the idea and checks the numbers. */
  public Exercise {
    idea = idea.map(List::copyOf);
    if (!(tempo >= Arrangement.SLOWEST && tempo <= Arrangement.FASTEST)) {
      throw new IllegalArgumentException("a tempo is 30 to 240 beats a minute, not " + tempo);
    }
    if (coachChords < 1 || coachChords > MOST_COACH_CHORDS) {
      throw new IllegalArgumentException(
          "the coach begins over 1 or 2 chords, not over " + coachChords);
    }
  }

  /** A way over a chart as it stands. */
  public static Exercise of(Way way, Chart chart) {
    return new Exercise(
        way,
        chart,
        Feel.read(chart.feel()).orElse(Feel.PLAIN),
        startingTempo(way, chart.tempo()),
        Optional.empty(),
        PitchRange.ANY,
        Optional.empty(),
        1,
        OptionalInt.empty());
  }

  /** A step of a plan over its chart, which the caller has opened. */
  public static Exercise of(Step step, Chart chart) {
    return new Exercise(
        step.way(),
        chart,
        Feel.read(chart.feel()).orElse(Feel.PLAIN),
        step.tempo(),
        step.bars(),
        PitchRange.ANY,
        step.idea(),
        1,
        OptionalInt.empty());
  }

  /** The tempo to begin at on the way to this one, in beats a minute. */
  public static double startingTempo(Way way, double tempo) {
    double start = way == Way.CLIMB ? Math.rint(tempo * SLOWER_AT_FIRST) : tempo;
    return Math.max(Arrangement.SLOWEST, Math.min(Arrangement.FASTEST, start));
  }
}
