package holdfast.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.carry.PitchRange;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChordSpan;
import holdfast.melody.IdeaNotation;
import holdfast.mistake.UserMistake;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LessonTest {

  private static final String IDEA = "G4/0.5 Bb4/0.5 C5 G4";

  @Test
  void every_way_is_ready_over_every_shipped_chart_with_and_without_an_idea() {
    for (String name : ChartLibrary.names()) {
      for (Way way : Way.values()) {
        for (Optional<String> idea : List.of(Optional.<String>empty(), Optional.of(IDEA))) {
          Lesson lesson = Lesson.of(exercise(way, ChartLibrary.open(name), idea), 3);
          double end = lesson.performance().lastBeat().orElseThrow();
          double before = 0;
          for (Passage passage : lesson.passages()) {
            assertTrue(passage.startBeat() >= before, name + " " + way);
            before = passage.startBeat();
          }
          assertTrue(before < end, name + " " + way);
          boolean studentPlays =
              way == Way.CLIMB
                  || lesson.passages().stream().anyMatch(p -> p.who() == Passage.Who.STUDENT);
          assertTrue(studentPlays, name + " " + way);
        }
      }
    }
  }

  @Test
  void in_a_head_start_the_coach_has_the_first_chord_or_the_first_two_of_each_chorus() {
    Chart chart = ChartLibrary.open("lantern-turn");
    for (int chords : new int[] {1, 2}) {
      Exercise one = exercise(Way.HEAD_START, chart, Optional.of(IDEA));
      Lesson lesson =
          Lesson.of(
              new Exercise(
                  Way.HEAD_START,
                  chart,
                  Feel.PLAIN,
                  60,
                  Optional.empty(),
                  PitchRange.ANY,
                  one.idea(),
                  chords,
                  OptionalInt.of(2)),
              0);
      List<Double> coach =
          lesson.passages().stream()
              .filter(p -> p.who() == Passage.Who.COACH)
              .map(Passage::startBeat)
              .toList();
      assertEquals(chords == 1 ? List.of(0.0, 32.0) : List.of(0.0, 4.0, 32.0, 36.0), coach);
    }
  }

  @Test
  void in_a_swap_every_chord_is_the_students_in_one_chorus_or_the_other() {
    Lesson lesson =
        Lesson.of(exercise(Way.SWAP, ChartLibrary.open("lantern-turn"), Optional.of(IDEA)), 0);
    Set<Double> students = new HashSet<>();
    Passage.Who before = Passage.Who.STUDENT;
    for (Passage passage : lesson.passages()) {
      if (passage.who() == Passage.Who.STUDENT) {
        students.add(passage.startBeat() % 32);
      }
      boolean newChorus = passage.startBeat() % 32 == 0 && passage.startBeat() > 0;
      assertTrue(newChorus || passage.who() != before, "they take turns: " + passage);
      before = passage.who();
    }
    assertEquals(8, students.size());
  }

  /** The cycle of fourths as musicians write it (common practice, no source). */
  @Test
  void twelve_keys_go_round_by_fourths_and_each_comes_once() {
    Lesson lesson =
        Lesson.of(exercise(Way.TWELVE_KEYS, ChartLibrary.open("slow-ferry"), Optional.empty()), 0);
    List<String> chords =
        lesson.passages().stream().map(p -> p.chords().get(0).harmony().text()).toList();
    ChordSpan first = ChartLibrary.open("slow-ferry").form().changes().get(0);
    assertEquals(first.harmony().text(), chords.get(0));
    List<Integer> roots =
        lesson.passages().stream()
            .map(p -> p.chords().get(0).harmony().chord().orElseThrow().root().pitchClass())
            .toList();
    for (int i = 1; i < 12; i++) {
      assertEquals((roots.get(0) + 5 * i) % 12, roots.get(i));
    }
    assertEquals(12, new HashSet<>(roots).size());
  }

  @Test
  void in_the_guessing_game_two_are_heard_one_is_guessed_and_told() {
    Lesson lesson =
        Lesson.of(
            exercise(Way.GUESS_NEXT, ChartLibrary.open("lantern-turn"), Optional.of(IDEA)), 0);
    List<Passage> passages = lesson.passages();
    for (int i = 0; i < passages.size(); i++) {
      boolean guessed = i % 4 == 2;
      assertEquals(
          guessed ? Passage.Who.STUDENT : Passage.Who.COACH, passages.get(i).who(), "passage " + i);
      if (i % 4 == 3) {
        assertEquals(passages.get(i - 1).chord(), passages.get(i).chord());
      }
    }
  }

  @Test
  void a_climb_without_bars_takes_the_first_turn_and_the_bar_before_it() {
    Lesson lesson =
        Lesson.of(exercise(Way.CLIMB, ChartLibrary.open("lantern-turn"), Optional.empty()), 0);
    assertEquals(new BarRange(5, 6), lesson.performance().arrangement().bars());
  }

  @Test
  void what_has_no_room_is_refused_with_its_mend() {
    UserMistake refused =
        assertThrows(
            UserMistake.class,
            () ->
                Lesson.of(
                    exercise(
                        Way.SWAP, ChartLibrary.open("lantern-turn"), Optional.of("G4/40 A4/2 B4")),
                    0));
    assertTrue(refused.getMessage().contains("make it shorter"), refused.getMessage());
  }

  private static Exercise exercise(Way way, Chart chart, Optional<String> idea) {
    return new Exercise(
        way,
        chart,
        Feel.PLAIN,
        60,
        Optional.empty(),
        PitchRange.ANY,
        idea.map(IdeaNotation::parse),
        1,
        OptionalInt.empty());
  }
}
