package holdfast.window.play;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.book.assignment.Assignment;
import holdfast.carry.PitchRange;
import holdfast.chart.Chart;
import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.practice.Exercise;
import holdfast.practice.Lesson;
import holdfast.practice.Way;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What is to be played, and who plays.
 *
 * @param chart the tune, in the key it is to sound in
 * @param tempo beats a minute
 * @param feel how the backing plays it
 * @param choruses how many; empty for without end
 * @param bars the bars that go round; empty for all
 * @param who who is listened to
 * @param way the way of practising; empty where the player plays alone
 * @param idea the idea to take along, from its own bar line; without it the first phrase is the
 *     idea
 * @param answers the number of the assignment that it answers
 */
public record TakeRequest(
    Chart chart,
    double tempo,
    Feel feel,
    OptionalInt choruses,
    Optional<BarRange> bars,
    Who who,
    Optional<Way> way,
    Optional<List<Note>> idea,
    Optional<String> answers) {

  /** The same lesson each time it is asked for. */
  private static final long SEED = 7;

  /** Who is listened to. */
  public enum Who {
    DEMO,
    KEYBOARD,
    VOICE
  }

  /** The chart as it stands, so many choruses. */
  public static TakeRequest of(Chart chart, int choruses, Who who) {
    return new TakeRequest(
        chart,
        playable(chart.tempo()),
        Feel.read(chart.feel()).orElse(Feel.PLAIN),
        OptionalInt.of(choruses),
        Optional.empty(),
        who,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** A tempo that a backing can be played at. */
  public static double playable(double tempo) {
    return Math.max(Arrangement.SLOWEST, Math.min(Arrangement.FASTEST, tempo));
  }

  /** The same at another tempo, in another feel, so many choruses. */
  public TakeRequest played(double atTempo, Feel inFeel, OptionalInt times) {
    return new TakeRequest(chart, playable(atTempo), inFeel, times, bars, who, way, idea, answers);
  }

  /** The same with this idea given. */
  public TakeRequest carrying(List<Note> given) {
    return new TakeRequest(
        chart, tempo, feel, choruses, bars, who, way, Optional.of(given), answers);
  }

  /** What a teacher asked for. */
  public static TakeRequest of(Assignment task, Who who) {
    TakeRequest plain =
        of(task.chart(), task.choruses(), who)
            .played(task.beatsPerMinute(), task.feel(), OptionalInt.of(task.choruses()));
    return new TakeRequest(
        plain.chart,
        plain.tempo,
        plain.feel,
        plain.choruses,
        plain.bars,
        who,
        task.way(),
        task.idea(),
        Optional.of(task.number()));
  }

  /** The given idea, over the first chord, where the player plays alone. */
  public Optional<Motif> givenIdea() {
    return way.isPresent()
        ? Optional.empty()
        : idea.map(
            notes -> Motif.over(performance().arrangement().changes().at(0).harmony(), notes));
  }

  /** The same as a way of practising. */
  public TakeRequest practising(
      Way how, double atTempo, Optional<BarRange> some, Optional<List<Note>> along) {
    return new TakeRequest(
        chart, playable(atTempo), feel, choruses, some, who, Optional.of(how), along, answers);
  }

  /**
   * The lesson, where there is a way of practising.
   *
   * @throws holdfast.mistake.UserMistake where the chart has no room for it
   */
  public Optional<Lesson> lesson() {
    return way.map(
        how ->
            Lesson.of(
                new Exercise(
                    how, chart, feel, tempo, bars, PitchRange.ANY, idea, 1, OptionalInt.empty()),
                SEED));
  }

  /** What the backing plays. */
  public Performance performance() {
    return lesson()
        .map(Lesson::performance)
        .orElseGet(
            () -> {
              Arrangement arrangement = Arrangement.of(chart, feel, tempo, bars, Optional.empty());
              return new Performance(arrangement, choruses, arrangement.usualCountIn(), Set.of());
            });
  }
}
