package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class PredictabilityTest {

  private static Context bars(String... symbols) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < symbols.length; i++) {
      chords.put(4.0 * i, Harmony.parse(symbols[i]));
    }
    return Context.over(Changes.through(chords, Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
  }

  @Test
  void the_same_notes_again_are_what_was_expected() {
    Motif idea = Motif.over(Harmony.parse("Dm7"), Written.typical(0, 62, 65, 69, 67, 65));
    Expectation heard =
        new Predictability(idea).hear(Written.typical(4, 62, 65, 69, 67, 65), bars("Dm7", "G7"));
    assertEquals(CarryWay.SAME_NOTES, heard.way());
    assertTrue(heard.nearness() > 0.95, heard::toString);
  }

  @Test
  void a_sequence_that_goes_on_becomes_what_is_counted_on() {
    Motif idea = Motif.over(Harmony.parse("C"), Written.typical(0, 72, 71, 69, 67, 69));
    Predictability listener = new Predictability(idea);
    Context over = bars("C", "Em7", "Am7", "Dm7");
    Expectation first = listener.hear(Written.typical(4, 71, 69, 67, 65, 67), over);
    Expectation second = listener.hear(Written.typical(8, 69, 67, 65, 64, 65), over);
    Expectation third = listener.hear(Written.typical(12, 67, 65, 64, 62, 64), over);
    assertEquals(CarryWay.BY_STEP, third.way());
    assertTrue(third.share() > first.share());
    assertTrue(third.nearness() >= second.nearness());
    assertEquals(Written.typical(12, 67, 65, 64, 62, 64), third.expected());
  }

  @Test
  void the_thread_breaks_at_the_first_phrase_that_nobody_could_foresee() {
    Motif idea = Motif.over(Harmony.parse("Dm7"), Written.typical(0, 62, 65, 69, 67, 65));
    Predictability listener = new Predictability(idea);
    Context over = bars("Dm7", "G7", "C", "Am7");
    assertFalse(listener.hear(Written.typical(4, 62, 65, 69, 67, 65), over).brokeThread());
    double[] other = {0, 1.5, 1.75, 3};
    assertTrue(listener.hear(Written.line(8, other, 79, 72, 76, 84), over).brokeThread());
    assertFalse(listener.hear(Written.line(12, other, 77, 71, 72, 83), over).brokeThread());
  }

  private static Expectation hear(String ideaChord, String chord, int... phrase) {
    Motif idea = Motif.over(Harmony.parse(ideaChord), Written.typical(0, 62, 65, 69, 67, 65));
    return new Predictability(idea).hear(Written.typical(4, phrase), bars(ideaChord, chord));
  }

  private static List<Integer> pitches(Expectation heard) {
    return heard.expected().stream().map(Note::pitch).toList();
  }

  @Test
  void the_same_notes_make_way_for_the_chord_by_a_semitone_or_a_whole_tone() {
    // Over Fm7 the A of D F A G F gives way to A flat, the D to C or E flat, the lower first.
    Expectation heard = hear("Dm7", "Fm7", 60, 65, 68, 67, 65);
    assertEquals(CarryWay.SAME_NOTES, heard.way());
    assertEquals(65, pitches(heard).get(1));
    assertEquals(68, pitches(heard).get(2));
    assertEquals(67, pitches(heard).get(3));
    // Over Abm7: D to D flat, A to A flat, G to G flat; F is its thirteenth.
    assertEquals(List.of(61, 65, 68, 66, 65), pitches(hear("Dm7", "Abm7", 61, 65, 68, 66, 65)));
  }

  @Test
  void with_the_root_the_idea_goes_as_far_as_the_chord_the_shorter_way_round() {
    Expectation up = hear("Dm7", "Fm7", 65, 68, 72, 70, 68);
    assertEquals(CarryWay.WITH_THE_ROOT, up.way());
    assertEquals(List.of(65, 68, 72, 70, 68), pitches(up));
    Expectation down = hear("Dm7", "Bm7b5", 59, 62, 65, 64, 62);
    assertEquals(CarryWay.WITH_THE_ROOT, down.way());
    assertEquals(List.of(59, 62, 65, 64, 62), pitches(down), "F sharp fitted to F");
    Expectation tritone = hear("Dm7", "Abm7", 68, 71, 75, 73, 71);
    assertEquals(CarryWay.WITH_THE_ROOT, tritone.way());
    assertEquals(List.of(68, 71, 75, 73, 71), pitches(tritone));
  }

  @Test
  void without_chords_or_key_a_step_is_a_whole_tone_and_the_same_notes_are_the_same() {
    Motif idea = Motif.of(Written.typical(0, 62, 65, 69, 67, 65));
    Predictability listener = new Predictability(idea);
    Expectation down = listener.hear(Written.typical(4, 60, 63, 67, 65, 63), Context.NOTES_ONLY);
    assertEquals(CarryWay.BY_STEP, down.way());
    assertEquals(List.of(60, 63, 67, 65, 63), pitches(down));
    Expectation again = listener.hear(Written.typical(8, 58, 61, 65, 63, 61), Context.NOTES_ONLY);
    assertEquals(CarryWay.BY_STEP, again.way());
    assertEquals(List.of(58, 61, 65, 63, 61), pitches(again));
    Expectation same = listener.hear(Written.typical(12, 62, 65, 69, 67, 65), Context.NOTES_ONLY);
    assertEquals(CarryWay.SAME_NOTES, same.way());
    assertEquals(1, same.nearness(), 0.12);
  }

  @Test
  void with_chords_and_no_key_steps_go_along_the_scale_of_the_moment() {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("Cmaj7"));
    Context noKey = Context.over(Changes.through(chords, Optional.empty()), Player.KEYBOARD, 4);
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), Written.typical(0, 64, 67, 71, 69, 67));
    Expectation up = new Predictability(idea).hear(Written.typical(4, 65, 69, 72, 71, 69), noKey);
    assertEquals(CarryWay.BY_STEP, up.way());
    assertEquals(List.of(65, 69, 72, 71, 69), pitches(up));
  }

  @Test
  void at_first_half_is_counted_on_the_same_notes_and_more_after_each_time() {
    Motif idea = Motif.over(Harmony.parse("Dm7"), Written.typical(0, 62, 65, 69, 67, 65));
    Predictability listener = new Predictability(idea);
    double before = 0;
    for (int k = 1; k <= 5; k++) {
      Expectation heard =
          listener.hear(Written.typical(4 * k, 62, 65, 69, 67, 65), bars("Dm7", "G7"));
      assertTrue(heard.share() > before && heard.share() < 1, "" + heard.share());
      if (k == 1) {
        assertEquals(0.5, heard.share(), 1e-12);
      }
      before = heard.share();
    }
    assertEquals(0.2, hear("Dm7", "Fm7", 65, 68, 72, 70, 68).share(), 1e-12, "with the root");
  }

  @Test
  void an_octave_higher_is_half_right_in_pitch_and_all_right_in_rhythm() {
    assertEquals(0.75, hear("Dm7", "Dm7", 74, 77, 81, 79, 77).nearness(), 1e-9);
  }

  @Test
  void what_was_hardly_counted_on_is_foreseen_for_the_most_part() {
    double nearness = hear("Dm7", "Fm7", 65, 68, 72, 70, 68).nearness();
    assertTrue(nearness > 0.8 && nearness < 0.95, "" + nearness);
  }

  @Test
  void one_note_is_as_near_as_its_pitch() {
    Motif idea = Motif.of(Written.typical(0, 62));
    assertEquals(
        1,
        new Predictability(idea).hear(Written.typical(4, 62), Context.NOTES_ONLY).nearness(),
        1e-9);
    double third =
        new Predictability(idea).hear(Written.typical(4, 66), Context.NOTES_ONLY).nearness();
    assertTrue(third < 0.4, "a third away, a whole tone from a step: " + third);
  }

  @Test
  void a_sequence_by_thirds_goes_on_by_thirds_and_a_leap_is_no_step() {
    Motif idea = Motif.over(Harmony.parse("C"), Written.typical(0, 60, 62, 64, 62, 60));
    Context over = bars("C", "C", "C", "C");
    Predictability thirds = new Predictability(idea);
    thirds.hear(Written.typical(4, 64, 65, 67, 65, 64), over);
    Expectation next = thirds.hear(Written.typical(8, 67, 69, 71, 69, 67), over);
    assertEquals(CarryWay.BY_STEP, next.way());
    assertEquals(List.of(67, 69, 71, 69, 67), pitches(next));
    Predictability leaps = new Predictability(idea);
    leaps.hear(Written.typical(4, 72, 74, 76, 74, 72), over);
    Expectation step = leaps.hear(Written.typical(8, 74, 76, 77, 76, 74), over);
    assertEquals(CarryWay.BY_STEP, step.way());
    assertEquals(List.of(74, 76, 77, 76, 74), pitches(step));
  }

  @Test
  void a_note_with_nothing_fitting_under_it_gives_way_upwards() {
    // Over a plain C the F sharp has the avoided F below and the fifth above.
    Motif idea = Motif.over(Harmony.parse("D"), Written.typical(0, 62, 66, 69, 66, 62));
    Expectation heard =
        new Predictability(idea).hear(Written.typical(4, 62, 67, 69, 67, 62), bars("D", "C"));
    assertEquals(CarryWay.SAME_NOTES, heard.way());
    assertEquals(List.of(62, 67, 69, 67, 62), pitches(heard));
    assertEquals(1, heard.nearness(), 1e-9);
  }
}
