package holdfast.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.BarRange;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.report.TakeSentences;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PlanTest {

  /** Every bar of this chart holds one chord and one statement. */
  private static final Chart CHART = ChartLibrary.open("lantern-turn");

  private static final String IDEA = "G4/0.5 Bb4/0.5 C5 G4";

  @Test
  void bars_where_the_idea_was_let_go_are_looped_slower_with_the_bar_that_leads_in() {
    String other = "Db5/0.25 Ab4/0.75 F4/0.25 D4/0.25 B3/0.5 A4/0.5";
    JudgedTake take = take(Map.of(6, other, 7, other));

    Step first = Plan.after(take, "lantern-turn").steps().get(0);

    assertEquals(Way.CLIMB, first.way(), first.toString());
    assertTrue(first.bars().orElseThrow().contains(6), first.toString());
    assertTrue(first.bars().orElseThrow().contains(5), first.toString());
    assertEquals(48, first.tempo());
    assertTrue(first.why().contains("let go"), first.why());
  }

  @Test
  void a_take_without_any_note_asks_for_an_idea() {
    JudgedTake silent =
        Coach.judge(
            Setting.of(CHART, TempoMap.steady(60), Player.KEYBOARD, Optional.empty()),
            List.of(),
            phrase -> {});

    Plan plan = Plan.after(silent, "lantern-turn");

    assertEquals(List.of(Way.SING_BACK), plan.steps().stream().map(Step::way).toList());
  }

  @Test
  void a_chorus_without_a_rest_is_no_idea_to_be_handed_on() {
    // As it was heard of a voice that sang an idea six times and never breathed.
    List<PlayedNote> played =
        IdeaNotation.parse(
                "C5/0.5 D5/0.5 E5 C5/0.75 C5/0.25 A4 C5/0.25 C5/0.25 D5/0.5 E5 C5 A4/0.5 A4/0.5"
                    + " D5/0.5 E5/0.5 F5 D5/0.25 D5/0.75 D5/0.25 A4 C5/0.25 C5/0.25 D5/0.5"
                    + " E5/0.25 E5/0.75 C5 G4 C5/0.5 D5/0.5 E5 C5 A4/0.25 A4/0.75 C5/0.5 D5/0.5"
                    + " E5 C5 A4")
            .stream()
            .map(n -> new PlayedNote(n.onsetBeats(), n.durationBeats(), n.pitch(), 0, 0.6, 1))
            .toList();
    JudgedTake take =
        Coach.judge(
            Setting.of(CHART, TempoMap.steady(60), Player.VOICE, Optional.empty()),
            played,
            phrase -> {});
    int heard = take.idea().orElseThrow().notes().size();
    assertTrue(heard > 16, heard + " notes");

    Step step = Plan.after(take, "lantern-turn").steps().get(0);

    assertEquals(Optional.empty(), step.idea(), step.command());
    assertEquals(
        List.of(
            "I heard one phrase of "
                + heard
                + " notes and took it for your idea. Rest after four or five"
                + " notes, so that I hear where your idea ends."),
        TakeSentences.of(take));
  }

  @Test
  void the_demo_take_has_at_most_three_steps_each_with_a_reason_and_a_command() {
    DemoTake demo = DemoTake.shipped();
    JudgedTake take =
        Coach.judge(
            Setting.of(
                demo.chart(), TempoMap.steady(demo.tempo()), Player.KEYBOARD, Optional.empty()),
            demo.played(),
            phrase -> {});

    List<Step> steps = Plan.after(take, demo.chart().title()).steps();

    assertTrue(!steps.isEmpty() && steps.size() <= 3, steps.toString());
    for (Step step : steps) {
      assertTrue(step.why().endsWith("."), step.why());
      assertTrue(step.command().startsWith("holdfast practise "), step.command());
    }
    assertEquals(Way.CLIMB, steps.get(0).way(), "she loses the idea: " + steps);
  }

  @Test
  void a_step_is_written_so_that_a_terminal_reads_it_as_it_was_meant() {
    Step step =
        new Step(
            Way.CLIMB,
            "my tunes/Paper Boats.txt",
            Optional.of("F#m"),
            Optional.of(new BarRange(5, 6)),
            48,
            Optional.of(IdeaNotation.parse("G4/0.5 | Bb4")),
            "Because.");

    assertEquals(
        "holdfast practise climb \"my tunes/Paper Boats.txt\" --key \"F#m\" --bars 5..6 --tempo 48 --idea"
            + " \"G4/0.5 | Bb4\"",
        step.command());
  }

  /** One statement a bar, other notes in some bars. */
  private static JudgedTake take(Map<Integer, String> others) {
    List<Note> line = new ArrayList<>();
    for (int bar = 1; bar <= 8; bar++) {
      for (Note note : IdeaNotation.parse(others.getOrDefault(bar, IDEA))) {
        line.add(new Note(note.onsetBeats() + 4.0 * (bar - 1), note.durationBeats(), note.pitch()));
      }
    }
    TempoMap tempo = TempoMap.steady(60);
    return Coach.judge(
        Setting.of(CHART, tempo, Player.KEYBOARD, Optional.empty()),
        new DemoStudent(4).play(line, tempo),
        phrase -> {});
  }
}
