package holdfast.carry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.harmony.FitJudge;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** An idea on its way through the shipped charts. */
class JourneyTest {

  private static final List<Note> IDEA = IdeaNotation.parse("G4/0.5 A4/0.5 C5 A4/0.5 E4/1.5");
  private static final List<Note> WITH_PICK_UP =
      IdeaNotation.parse("G4/0.5 | A4/0.75 C5/0.25 A4 G4/1.5");

  private static Journey through(String chart, List<Note> idea) {
    Chart tune = ChartLibrary.open(chart);
    return Journey.through(
        new Statement(idea, Optional.empty()),
        tune.form(),
        tune.key(),
        new PitchRange(55, 79),
        Habit.UNKNOWN);
  }

  @Test
  void every_shipped_chart_is_carried_through_within_a_voice_and_sits() {
    for (String name : ChartLibrary.names()) {
      for (List<Note> idea : List.of(IDEA, WITH_PICK_UP)) {
        Chart tune = ChartLibrary.open(name);
        Journey journey = through(name, idea);
        List<Note> melody = journey.melody();
        assertEquals(journey.stops().size() * idea.size(), melody.size());
        for (int i = 1; i < melody.size(); i++) {
          assertTrue(melody.get(i).onsetBeats() >= melody.get(i - 1).endBeats() - 1e-9, name);
        }
        assertTrue(melody.stream().allMatch(n -> n.pitch() >= 55 && n.pitch() <= 79), name);
        Changes changes = new Changes(tune.form().changes(), tune.form().lengthBeats(), tune.key());
        assertTrue(
            FitJudge.judge(melody, changes, tune.form().metre()).fit().orElseThrow().sits(), name);
      }
    }
  }

  @Test
  void there_is_a_stop_for_every_new_chord_that_leaves_room() {
    Journey journey = through("One Door Open", IDEA);
    assertEquals(List.of(1, 9, 13), journey.stops().stream().map(Stop::bar).toList());
    Journey busy = through("Porch Light", IDEA);
    // Bar 15 has two chords; the idea fills the bar, so its second chord has no statement.
    assertEquals(16, busy.stops().size());
  }

  @Test
  void a_player_s_statements_show_a_habit() {
    Optional<Key> key = Optional.of(Key.parse("C"));
    Statement first = said("C4 E4 G4 E4", "C6");
    Statement second = said("D4 F4 A4 F4", "Dm7");
    Statement third = said("E4 G4 B4 G4", "Em7");
    assertEquals(Way.SEQUENCE, Way.between(first, second, key));
    assertEquals(Way.TRANSPOSED, Way.between(second, third, key));
    assertEquals(Way.LITERAL, Way.between(third, third, key));
    assertEquals(Way.SKEWED, Way.between(first, said("C4 E4 A4 E4", "Am7"), key));
    Habit habit = Habit.of(List.of(first, second, first, said("C4 E4", "C")), key);
    assertEquals(3.0 / 6, habit.likelihood(Way.SEQUENCE), 1e-12);
  }

  private static Statement said(String notes, String chord) {
    return new Statement(IdeaNotation.parse(notes), Optional.of(Harmony.parse(chord)));
  }
}
