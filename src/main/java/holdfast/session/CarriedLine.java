package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.carry.Adaptation;
import holdfast.carry.Carrying;
import holdfast.carry.Habit;
import holdfast.carry.PitchRange;
import holdfast.carry.Question;
import holdfast.carry.Statement;
import holdfast.carry.Way;
import holdfast.chart.Bar;
import holdfast.chart.Changes;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * What the demo student means to play over a tune that nobody wrote a line for: an idea of her own,
 * said once in each place of the form and carried from chord to chord, twice through. In the first
 * chorus a turn that she does not expect throws her off into a scale run; in the second she holds
 * on. The same tune, tempo and seed give the same line.
 */
final class CarriedLine {

  /** Where she plays, A3 to A5: within a young voice and on most instruments. */
  static final PitchRange REACH = new PitchRange(57, 81);

  /** A place of the form holds one statement and the breath after it. */
  private static final int PULSES_OF_A_PLACE = 4;

  /** In a form of fewer places than this she is thrown off once, in a longer one twice. */
  private static final int PLACES_FOR_TWO_SLIPS = 6;

  /** Lengths of a scale run in pulses. */
  private static final List<Double> RUN = List.of(0.5, 0.5, 0.5, 0.5, 0.5, 0.5);

  /** Semitones: six notes of any taught scale span less. */
  private static final int ROOM_FOR_A_RUN = 12;

  /** She likes to move: where her idea could stay and could move, it moves more often than not. */
  private static final Habit HABIT =
      Habit.heard(List.of(Way.SKEWED, Way.SKEWED, Way.SKEWED, Way.SEQUENCE, Way.SEQUENCE));

  private final Changes changes;
  private final Arrangement arrangement;
  private final double pulse;
  private final int barsOfAPlace;
  private final Statement idea;

  private CarriedLine(Arrangement arrangement, long seed) {
    this.arrangement = arrangement;
    this.changes = arrangement.changes();
    this.pulse = DemoIdea.pulseBeats(arrangement.tempo());
    this.barsOfAPlace = (int) Math.ceil(PULSES_OF_A_PLACE * pulse / arrangement.metre().beats());
    this.idea =
        new Statement(
            DemoIdea.over(changes.at(0).harmony(), changes.key(), pulse, seed),
            Optional.of(changes.at(0).harmony()));
  }

  /** The line, in beats from the first beat of the first bar that is played. */
  static List<Note> over(Arrangement arrangement, long seed) {
    return new CarriedLine(arrangement, seed).line();
  }

  private List<Note> line() {
    int round = arrangement.bars().size();
    // A form that is shorter than one place goes by more than once under it.
    int lap = round * (int) Math.ceil((double) barsOfAPlace / round);
    int places = lap / barsOfAPlace;
    Set<Integer> slips = slips(places);
    List<Note> line = new ArrayList<>();
    Statement last = idea;
    for (int place = 0; place < DemoTake.CHORUSES * places; place++) {
      int bars = place / places * lap + place % places * barsOfAPlace;
      double start = (double) bars * arrangement.metre().beats();
      if (slips.contains(place)) {
        line.addAll(run(start, highest(last)));
      } else {
        Adaptation said = place == 0 ? asItIs() : carried(last, start);
        line.addAll(said.placedAt(start));
        last = new Statement(said.notes(), Optional.of(changes.at(start).harmony()));
      }
    }
    return line;
  }

  private Adaptation asItIs() {
    return new Adaptation(idea.notes(), Way.LITERAL, 0, List.of("It is the idea."));
  }

  private Adaptation carried(Statement last, double start) {
    Question question = new Question(idea, last, changes, start, arrangement.metre(), REACH, HABIT);
    return Carrying.choices(question).get(0);
  }

  /** The places of the first chorus where she loses the idea; never where she states it. */
  private Set<Integer> slips(int places) {
    List<Bar> bars =
        arrangement
            .form()
            .bars()
            .subList(arrangement.bars().first() - 1, arrangement.bars().last());
    IntPredicate turns =
        place ->
            IntStream.range(place * barsOfAPlace, (place + 1) * barsOfAPlace)
                .anyMatch(bar -> bars.get(bar % bars.size()).unexpected());
    Set<Integer> slips = new LinkedHashSet<>();
    IntStream.range(1, places)
        .filter(turns)
        .limit(places < PLACES_FOR_TWO_SLIPS ? 1 : 2)
        .forEach(slips::add);
    if (slips.isEmpty() && places > 1) {
      // Where no turn is marked, soon after the middle, as attention wanders.
      slips.add(places / 2 + (places > 2 ? 1 : 0));
    }
    return slips;
  }

  private static int highest(Statement statement) {
    return statement.notes().stream().mapToInt(Note::pitch).max().orElseThrow();
  }

  /** Down the scale of the chord from where she was, or up where there is no room below. */
  private List<Note> run(double start, int from) {
    int step = from - ROOM_FOR_A_RUN >= REACH.low() ? -1 : 1;
    List<Note> run = new ArrayList<>();
    double onset = start;
    int pitch = from;
    for (int i = 0; i < RUN.size(); i++) {
      boolean inScale = changes.paletteAt(onset).scale().contains(pitch);
      if (i > 0 || !inScale) {
        pitch = DemoIdea.beside(pitch, step, changes.paletteAt(onset).scale());
      }
      run.add(new Note(onset, RUN.get(i) * pulse, pitch));
      onset += RUN.get(i) * pulse;
    }
    return run;
  }
}
