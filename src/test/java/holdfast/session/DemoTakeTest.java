package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingEvent;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Part;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.chart.Transposition;
import holdfast.harmony.Fit;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.theory.NoteName;
import holdfast.time.TempoMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the demo student plays over charts that nobody wrote a line for. */
class DemoTakeTest {

  private static final Chart PAPER_BOATS = ChartLibrary.open("paper-boats");

  static List<String> shippedCharts() {
    return ChartLibrary.names();
  }

  private static Arrangement arranged(
      Chart chart, Feel feel, double tempo, Optional<BarRange> bars) {
    return Arrangement.of(chart, feel, tempo, bars, Optional.empty());
  }

  private static JudgedTake judged(Arrangement arrangement, DemoTake take) {
    TempoMap tempo = TempoMap.steady(arrangement.tempo());
    Setting setting = Setting.of(arrangement, tempo, Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, take.played(tempo), phrase -> {});
  }

  @Test
  void over_paper_boats_she_plays_the_line_that_was_written_for_it_at_any_tempo() {
    DemoTake take = DemoTake.over(arranged(PAPER_BOATS, Feel.BALLAD, 80, Optional.empty()));
    assertEquals(DemoTake.shipped().line(), take.line());
    assertEquals(80, take.tempo());
  }

  @Test
  void in_another_key_or_over_some_of_its_bars_the_written_line_would_be_wrong() {
    Chart moved = Transposition.to(PAPER_BOATS, NoteName.parse("Ab"));
    List<Note> written = DemoTake.shipped().line();
    assertNotEquals(written, DemoTake.over(Arrangement.of(moved)).line());
    assertNotEquals(
        written,
        DemoTake.over(arranged(PAPER_BOATS, Feel.PLAIN, 66, Optional.of(new BarRange(5, 8))))
            .line());
    assertNotEquals(
        written, DemoTake.over(arranged(PAPER_BOATS, Feel.DRONE, 66, Optional.empty())).line());
  }

  /** The idea is carried in every place of both choruses but where a turn throws her off. */
  @ParameterizedTest
  @MethodSource("shippedCharts")
  void over_any_chart_her_idea_is_heard_and_so_is_where_she_loses_it(String name) {
    Arrangement arrangement = Arrangement.of(ChartLibrary.open(name));
    boolean written = name.equals("paper-boats");
    DemoTake take = written ? DemoTake.shipped() : DemoTake.over(arrangement);
    JudgedTake judged = judged(written ? arrangement.at(take.tempo()) : arrangement, take);

    JudgedPhrase first = judged.phrases().get(0);
    assertTrue(first.statesTheIdea());
    assertEquals(new Place(1, 1), first.place());
    assertTrue(first.harmony().fit().map(Fit::sits).orElse(false), "her idea fits its chord");
    assertEquals(
        DemoTake.CHORUSES * arrangement.form().bars().size(),
        judged.phrases().size(),
        "a phrase a bar");
    Set<Integer> turns = arrangement.form().unexpectedBars();
    List<Place> lost = judged.counts().lost().stream().map(JudgedPhrase::place).toList();
    assertFalse(lost.isEmpty());
    assertTrue(lost.size() <= 2, lost.toString());
    for (Place place : lost) {
      assertEquals(1, place.chorus(), "in the second chorus she holds on");
      assertTrue(turns.contains(place.bar()), place + " is no turn");
    }
    // A skewed idea is the lesson: somewhere it has to move, or there is nothing to hear.
    assertTrue(
        judged.phrases().stream()
                .filter(p -> p.verdict().family() == Family.RESTATED)
                .map(p -> p.notes().stream().map(Note::pitch).toList())
                .distinct()
                .count()
            > 1);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void a_seed_is_a_line_and_other_seeds_bring_other_ideas(long seed) {
    Arrangement arrangement = Arrangement.of(ChartLibrary.open("lantern-turn"));
    assertEquals(CarriedLine.over(arrangement, seed), CarriedLine.over(arrangement, seed));
    Set<List<Note>> openings = new HashSet<>();
    for (long other = seed; other < seed + 6; other++) {
      openings.add(CarriedLine.over(arrangement, other).subList(0, 4));
    }
    assertTrue(openings.size() > 1, "always the same idea");
  }

  static Stream<Arrangement> oddOnes() {
    return Stream.of(
        arranged(read("key: D\nmetre: 3/4", "| D | ! Bb7 | Gm6 | A7 |"), Feel.PLAIN, 66),
        arranged(read("key: G\nmetre: 6/8", "| G | Em | ! Eb | D7 |"), Feel.PLAIN, 150),
        arranged(read("key: A\nmetre: 5/4", "| Amaj7 | D7 | ! F7 | E7 |"), Feel.PLAIN, 90),
        arranged(read("key: C\nmetre: 2/2", "| C | Ab | F | G |"), Feel.PLAIN, 40),
        arranged(read("key: B\nmetre: 4/4", "| B5 | F#sus4 | B5 | F#7#9 |"), Feel.PLAIN, 240),
        arranged(read("key: Em\nmetre: 4/4", "| N.C. | Em | N.C. | B7 |"), Feel.PLAIN, 30),
        arranged(read("metre: 4/4", "| N.C. |"), Feel.PLAIN, 60),
        arranged(read("key: Bb\nmetre: 3/4", "| Bbaug |"), Feel.SWING, 200),
        arranged(ChartLibrary.open("kettle-minor"), Feel.DRONE, 60),
        arranged(
            ChartLibrary.open("slow-ferry"), Feel.PLAIN, 100, Optional.of(new BarRange(4, 4))));
  }

  private static Arrangement arranged(Chart chart, Feel feel, double tempo) {
    return arranged(chart, feel, tempo, Optional.empty());
  }

  private static Chart read(String head, String bars) {
    return ChartText.parse("title: Odd\n" + head + "\ntempo: 60\n\n" + bars + "\n", "odd");
  }

  @ParameterizedTest
  @MethodSource("oddOnes")
  void any_metre_tempo_and_harmony_has_a_line_that_can_be_played(Arrangement arrangement) {
    List<Note> line = DemoTake.over(arrangement).line();
    assertTrue(line.size() >= 8, "only " + line);
    assertEquals(0, line.get(0).onsetBeats());
    double free = 0;
    for (Note note : line) {
      assertTrue(CarriedLine.REACH.contains(note.pitch()), note + " is out of reach");
      assertTrue(note.onsetBeats() >= free - 1e-9, note + " overlaps");
      double seconds = note.durationBeats() * 60 / arrangement.tempo();
      assertTrue(seconds >= 0.29 && seconds < 2.5, note + " lasts " + seconds + " s");
      free = note.endBeats();
    }
  }

  @Test
  void what_sounds_is_what_the_coach_is_told_note_for_note_at_the_same_moment() {
    Arrangement arrangement =
        arranged(ChartLibrary.open("slow-ferry"), Feel.PLAIN, 71, Optional.empty());
    Performance performance = Performance.of(arrangement, 2);
    DemoPlayer student = DemoPlayer.over(performance);

    List<BackingEvent> sounding =
        student.heardIn(performance).events().stream()
            .filter(event -> event.part() == Part.LINE)
            .toList();

    List<PlayedNote> told = student.played();
    assertEquals(told.size(), sounding.size());
    TempoMap tempo = performance.tempoMap();
    for (int i = 0; i < told.size(); i++) {
      assertEquals(told.get(i).onsetSeconds(), tempo.secondsAt(sounding.get(i).onsetBeats()), 1e-9);
      assertEquals(told.get(i).pitch(), sounding.get(i).pitch());
      assertEquals(told.get(i).loudness(), sounding.get(i).velocity() / 127.0, 1e-9);
    }
    assertTrue(
        told.stream()
                .map(note -> note.onsetSeconds() * 71 / 60 % 0.5)
                .collect(Collectors.toSet())
                .size()
            > told.size() / 2,
        "she plays as a person does, not on the grid");
  }
}
