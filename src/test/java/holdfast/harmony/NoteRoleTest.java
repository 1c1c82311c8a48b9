package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.IdeaNotation;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * The kinds of non-chord tones as harmony books tell them apart, by how they are reached and left
 * (common practice, no source).
 */
class NoteRoleTest {

  private static Changes changes(String key, Object... startingAt) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < startingAt.length; i += 2) {
      chords.put(((Number) startingAt[i]).doubleValue(), Harmony.parse((String) startingAt[i + 1]));
    }
    return Changes.through(chords, Optional.of(key).filter(k -> !k.isEmpty()).map(Key::parse));
  }

  private static JudgedLine judged(String line, Changes changes) {
    return FitJudge.judge(IdeaNotation.parse(line), changes);
  }

  private static List<String> roles(String line, Changes changes) {
    return judged(line, changes).roleTexts();
  }

  private static String role(int note, String line, Changes changes) {
    return roles(line, changes).get(note);
  }

  private static String sentence(int note, String line, Changes changes) {
    return judged(line, changes).notes().get(note).sentence(changes.key());
  }

  @Test
  void a_note_of_the_chord_is_a_chord_tone_and_its_colour_a_tension() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals(
        List.of("chord tone", "tension", "chord tone", "tension"), roles("E4 D4 B3 A3", c));
    assertEquals("E is the third of Cmaj7: it belongs.", sentence(0, "E4 D4 B3 A3", c));
    assertEquals("D is the ninth over Cmaj7: it colours the chord.", sentence(1, "E4 D4 B3 A3", c));
  }

  @Test
  void a_step_that_is_filled_in_one_direction_passes() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("passing", role(1, "E4/0.5 F4/0.5 G4", c));
    assertEquals("passing", role(1, "E4/0.5 Eb4/0.5 D4", c));
    assertEquals("F passes by step on its way to G.", sentence(1, "E4/0.5 F4/0.5 G4", c));
  }

  @Test
  void two_passing_notes_in_a_row_both_pass() {
    // B♭ and B♮ between A and C over F6.
    assertEquals(
        List.of("chord tone", "passing", "passing", "chord tone"),
        roles("A4/0.5 Bb4/0.5 B4/0.5 C5", changes("Bb", 0, "Bb6/F", 0.25, "F6")).subList(0, 4));
  }

  @Test
  void there_and_back_by_step_is_a_neighbour() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("neighbour", role(1, "G4/0.5 Ab4/0.5 G4", c));
    assertEquals("neighbour", role(1, "E4/0.5 F4/0.5 E4", c));
    assertEquals(
        "F is a neighbour of E, one step away, and goes there.",
        sentence(1, "E4/0.5 F4/0.5 E4", c));
  }

  @Test
  void a_light_half_step_from_outside_after_a_leap_approaches() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("approach", role(1, "C4 -/0.5 F#4/0.5 G4", c));
    assertEquals("F♯ leads into G by a half step.", sentence(1, "C4 -/0.5 F#4/0.5 G4", c));
  }

  @Test
  void from_above_and_below_two_notes_enclose_a_chord_tone() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals(
        List.of("chord tone", "enclosure", "enclosure", "chord tone"),
        roles("C5/0.5 F4/0.5 D#4/0.5 E4", c));
    assertEquals(
        "F helps to close in on E from above and below.",
        sentence(1, "C5/0.5 F4/0.5 D#4/0.5 E4", c));
  }

  @Test
  void a_note_reached_by_leap_that_leans_on_the_beat_and_gives_way_is_an_appoggiatura() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("appoggiatura", role(1, "C4 F4 E4/0.5", c));
    assertEquals("F leans on Cmaj7, then gives way to E.", sentence(1, "C4 F4 E4/0.5", c));
  }

  @Test
  void a_note_that_stays_from_the_chord_before_and_gives_way_is_a_suspension() {
    // C is the seventh of Dm7 and the fourth of G7, which falls to its third.
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals("suspension", role(1, "-/2 A4 C5/2 B4/2", c));
    assertEquals(
        "C stays from the chord before, then gives way to B.", sentence(1, "-/2 A4 C5/2 B4/2", c));
    assertEquals("suspension", role(1, "-/3 C5 C5 B4/2", c), "struck again on the change");
  }

  @Test
  void the_same_note_that_does_not_give_way_is_held_against_the_new_chord() {
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals("held against the chord", role(0, "-/3 C5/3 G4", c));
  }

  @Test
  void a_note_of_the_next_chord_that_comes_early_anticipates() {
    Changes c = changes("C", 0, "C7", 4, "Fmaj7");
    assertEquals("anticipation", role(1, "-/3 G4/0.5 A4/0.5 A4", changes("Bb", 0, "Cm7", 4, "F7")));
    assertEquals("anticipation", role(1, "-/3 G4/0.5 E4/1.5", changes("", 0, "Fm7", 4, "Cmaj7")));
    assertEquals(
        "E comes early: it is the third of Cmaj7, the next chord.",
        sentence(1, "-/3 G4/0.5 E4/1.5", changes("", 0, "Fm7", 4, "Cmaj7")));
    assertEquals("chord tone", role(0, "-/3.5 C5/1.5", c), "a common tone is at home in both");
  }

  @Test
  void lowered_third_and_fifth_over_a_dominant_are_blue() {
    Changes c = changes("F", 0, "F7");
    assertEquals("blue note", role(1, "C4 B3/2 F4", c));
    assertEquals("B is a blue note over F7.", sentence(1, "C4 B3/2 F4", c));
  }

  @Test
  void a_long_note_that_rubs_and_gives_way_to_nothing_is_held_against_the_chord() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("held against the chord", role(2, "G4 E4 F4/2", c));
    assertEquals(
        "F is held and rubs against Cmaj7; a step to E would settle it.",
        sentence(2, "G4 E4 F4/2", c));
  }

  @Test
  void a_short_note_that_leads_nowhere_is_outside_or_of_the_scale() {
    Changes c = changes("C", 0, "Cmaj7");
    assertEquals("outside", role(1, "G4/0.5 Eb4/0.5 C5", c));
    assertEquals("scale tone", role(1, "C5/0.5 F4/0.5 B4", c));
  }

  @Test
  void without_a_chord_nothing_is_judged() {
    Changes c = changes("C", 0, "N.C.");
    JudgedLine line = judged("C4 F#4 Bb4", c);
    assertEquals(List.of("not judged", "not judged", "not judged"), line.roleTexts());
    assertTrue(line.fit().isEmpty());
    assertEquals(
        "No chord sounds under the C, so there is nothing to judge it by.",
        sentence(0, "C4 F#4 Bb4", c));
  }

  @Test
  void over_an_optional_chord_either_reading_will_do() {
    Changes c = changes("C", 0, "Cmaj7", 2, "(C#dim7)", 4, "Dm7");
    assertEquals("chord tone", role(0, "-/2 C4/2", c), "C belongs to the chord that goes on");
    assertEquals("chord tone", role(0, "-/2 Bb4/2", c), "B♭ belongs to the optional chord");
  }

  @Test
  void in_a_phrase_across_a_change_each_chord_is_judged_in_its_time() {
    Changes c = changes("", 0, "Cmaj7", 4, "Abmaj7");
    assertTrue(judged("-/2 E4 G4 Eb4 C4", c).fit().orElseThrow().sits());
    assertFalse(judged("-/2 Eb4 Ab4 E4 B4", c).fit().orElseThrow().sits());
  }

  @Test
  void every_role_has_a_word_of_its_own() {
    assertEquals(
        NoteRole.values().length,
        List.of(NoteRole.values()).stream().map(NoteRole::text).distinct().count());
  }
}
