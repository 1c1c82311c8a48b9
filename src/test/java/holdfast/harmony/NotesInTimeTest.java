package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * When a note is early, late, long or last, as teachers of harmony and of jazz phrasing hear it
 * (common practice, no source): an eighth note early belongs to the next chord, a loose finger to
 * none.
 */
class NotesInTimeTest {

  private static final Changes CMAJ7 = changes("C", 0, "Cmaj7");

  private static Changes changes(String key, Object... startingAt) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < startingAt.length; i += 2) {
      chords.put(((Number) startingAt[i]).doubleValue(), Harmony.parse((String) startingAt[i + 1]));
    }
    return Changes.through(chords, Optional.of(key).filter(k -> !k.isEmpty()).map(Key::parse));
  }

  /** The role of one note of a line told as onset, duration, pitch, onset, duration, pitch. */
  private static String role(int note, Changes changes, double... line) {
    return heard(note, changes, line).role().text();
  }

  private static HeardNote heard(int note, Changes changes, double... line) {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < line.length; i += 3) {
      notes.add(new Note(line[i], line[i + 1], (int) line[i + 2]));
    }
    return FitJudge.judge(notes, changes).notes().get(note);
  }

  @Test
  void an_eighth_note_early_and_held_over_is_the_next_chords() {
    Changes c = changes("", 0, "Fm7", 4, "Cmaj7");
    HeardNote early = heard(1, c, 2, 1, 67, 3.5, 1.5, 64);
    assertEquals(NoteRole.ANTICIPATION, early.role());
    assertEquals("Cmaj7", early.harmony().display());
    assertEquals("anticipation", role(1, c, 2, 1, 67, 3.5, 0.5, 64, 4, 1, 64), "struck again");
    assertNotEquals("anticipation", role(1, c, 2, 0.5, 67, 2.75, 0.4, 64, 4, 1, 64), "too early");
  }

  @Test
  void a_long_note_may_come_a_beat_early_and_no_earlier() {
    Changes c = changes("", 0, "Fm7", 4, "Cmaj7");
    assertEquals("anticipation", role(1, c, 2, 1, 67, 3, 2, 64));
    assertEquals("held against the chord", role(1, c, 1, 1, 67, 2.75, 2.25, 64));
    assertEquals("held against the chord", role(1, c, 2, 1, 67, 3, 1.1, 64), "let go in time");
  }

  @Test
  void a_push_that_gives_way_is_a_suspension_of_the_chord_that_it_meets() {
    // C is at home in Dm7, not in G7, and falls to B.
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    HeardNote pushed = heard(1, c, 2.5, 1, 69, 3.5, 1.5, 72, 5, 1, 71);
    assertEquals(NoteRole.SUSPENSION, pushed.role());
    assertEquals("G7", pushed.harmony().display());
    assertEquals(71, pushed.goal().orElseThrow().pitch());
    assertEquals("held against the chord", role(1, c, 2.5, 1, 69, 3.5, 1.5, 72, 5, 1, 67));
  }

  @Test
  void a_push_that_is_at_home_in_neither_chord_is_weighed_in_the_one_that_it_meets() {
    // F lies beside Cmaj7 and outside Gmaj7, and leads into its F sharp.
    Changes c = changes("C", 0, "Cmaj7", 4, "Gmaj7");
    HeardNote pushed = heard(1, c, 2.5, 1, 60, 3.5, 1, 65, 4.5, 1, 66);
    assertEquals("Gmaj7", pushed.harmony().display());
    assertEquals(NoteRole.APPROACH, pushed.role());
  }

  @Test
  void out_of_silence_a_push_is_the_first_chords_and_what_comes_sooner_is_nobodys() {
    Changes c = changes("C", 0, "N.C.", 4, "Cmaj7");
    assertEquals("chord tone", role(0, c, 3.5, 1.5, 64));
    assertEquals("tension", role(0, c, 3.5, 1.5, 62));
    assertEquals("held against the chord", role(0, c, 3.5, 1.5, 65));
    assertEquals("not judged", role(0, c, 2, 3, 64));
    assertEquals("not judged", role(0, c, 3.5, 0.5, 64));
  }

  @Test
  void a_loose_finger_does_not_meet_the_next_chord() {
    Changes c = changes("", 0, "Cmaj7", 4, "Abmaj7");
    assertEquals("chord tone", role(0, c, 2, 2.2, 64, 4.5, 1, 63));
    assertEquals("chord tone", role(0, c, 2, 2.6, 64, 4.75, 1, 68), "short in the new chord");
    assertEquals("held against the chord", role(0, c, 2, 3, 64, 5, 1, 68), "a beat in it");
    assertEquals("held against the chord", role(0, c, 2, 2.5, 64), "and the last that is heard");
    assertEquals("Abmaj7", heard(0, c, 2, 3, 64, 5, 1, 68).harmony().display().replace("♭", "b"));
    assertEquals("Cmaj7", heard(0, c, 2, 2.6, 64, 4.75, 1, 68).harmony().display());
  }

  @Test
  void a_note_that_leaves_before_the_change_was_not_suspended() {
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals("suspension", role(0, c, 2, 2.5, 72, 4.5, 1, 71));
    assertEquals("chord tone", role(0, c, 2, 1.9, 72, 3.9, 1, 71));
  }

  @Test
  void a_note_struck_again_on_the_change_or_just_after_it_is_suspended() {
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals("suspension", role(1, c, 3, 1, 72, 4, 1, 72, 5, 1, 71));
    assertEquals("suspension", role(1, c, 3, 1, 72, 4.25, 0.75, 72, 5, 1, 71));
    assertNotEquals("suspension", role(1, c, 3, 1, 72, 4.5, 0.5, 72, 5, 1, 71), "too late");
    assertNotEquals("suspension", role(1, c, 3, 1, 71, 4, 1, 72, 5, 1, 71), "another note before");
    assertNotEquals("suspension", role(1, c, 3, 1, 72, 4, 1, 72, 5, 1, 67), "left by leap");
    assertNotEquals("suspension", role(1, c, 2, 0.5, 72, 4, 1, 72, 5, 1, 71), "after a long rest");
  }

  @Test
  void over_a_rest_of_more_than_a_beat_a_line_leads_nowhere() {
    assertEquals("passing", role(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 2, 1, 67));
    assertEquals("held against the chord", role(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 2.1, 1, 67));
    assertEquals("held against the chord", role(1, CMAJ7, 0, 0.5, 64, 1.6, 1, 65), "nor comes");
  }

  @Test
  void before_a_rest_a_note_is_heard_longer() {
    assertEquals("scale tone", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1.75, 1, 71));
    assertEquals("held against the chord", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1.9, 1, 71));
    assertEquals(
        "scale tone", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.4, 65), "the very last, but short");
    assertEquals("held against the chord", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65));
  }

  @Test
  void a_quarter_played_a_little_short_is_long() {
    assertEquals("held against the chord", role(1, CMAJ7, 0, 1, 72, 1, 0.9, 65, 2, 1, 71));
    assertEquals("scale tone", role(1, CMAJ7, 0, 1, 72, 1, 0.75, 65, 2, 1, 71));
  }

  @Test
  void a_note_leans_on_a_stronger_place_or_by_its_length() {
    assertEquals("appoggiatura", role(1, CMAJ7, 0, 1, 60, 1, 0.5, 65, 1.5, 0.5, 64), "on the beat");
    assertEquals("appoggiatura", role(1, CMAJ7, 0, 0.5, 60, 0.5, 0.75, 65, 1.25, 0.5, 64), "long");
    assertEquals("neighbour", role(1, CMAJ7, 0, 0.5, 60, 0.5, 0.5, 65, 1, 0.5, 64), "neither");
  }

  @Test
  void only_a_note_from_outside_leads_by_a_half_step_as_an_approach() {
    assertEquals("approach", role(1, CMAJ7, 0, 0.5, 60, 0.5, 0.5, 63, 1, 0.5, 64));
    assertEquals("outside", role(1, CMAJ7, 0, 0.5, 76, 0.5, 0.5, 70, 1, 0.5, 65), "to no rest");
    assertNotEquals(
        "approach", role(1, CMAJ7, 0, 0.5, 60, 0.5, 0.5, 65, 1, 0.5, 64), "of the scale");
  }

  @Test
  void two_notes_close_in_on_a_chord_tone_from_both_sides_and_one_by_a_half_step() {
    assertEquals("enclosure", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1, 0.5, 63, 1.5, 1, 64));
    assertEquals("enclosure", role(2, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1, 0.5, 63, 1.5, 1, 64));
    assertNotEquals(
        "enclosure", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 63, 1, 0.5, 61, 1.5, 1, 62), "a ninth");
    assertNotEquals(
        "enclosure", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1, 0.5, 66, 1.5, 1, 64), "above");
    assertNotEquals(
        "enclosure", role(1, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 68, 1, 0.5, 63, 1.5, 1, 64), "too far");
  }

  @Test
  void a_step_aside_that_does_not_come_back_is_half_a_neighbour() {
    assertEquals("neighbour", role(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 1, 0.5, 71));
    assertEquals(
        "F steps aside from the note before and jumps off.",
        heard(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 1, 0.5, 71).sentence(Optional.empty()));
    assertEquals("neighbour", role(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 1, 0.5, 64));
    assertNotEquals("passing", role(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 1, 0.5, 64));
  }

  @Test
  void in_a_blues_the_lowered_third_and_fifth_of_home_are_blue_over_its_dominants() {
    Changes blues = changes("F", 0, "F7", 4, "Bb7", 8, "C7", 12, "F7");
    assertEquals("blue note", role(1, blues, 0, 1, 60, 1, 1, 68, 2, 1, 72), "A flat over F7");
    assertEquals("blue note", role(1, blues, 8, 1, 60, 9, 1, 71, 10, 1, 64), "B over C7");
    assertEquals("held against the chord", role(1, blues, 0, 1, 60, 1, 1, 66, 2, 1, 72), "G flat");
    Changes minor = changes("Fm", 0, "Fm7");
    assertEquals("blue note", role(1, minor, 0, 1, 60, 1, 1, 71, 2, 1, 68), "over its minor home");
    Changes other = changes("F", 0, "Gm7");
    assertEquals("held against the chord", role(1, other, 0, 1, 62, 1, 1, 71, 2, 1, 67));
    Changes major = changes("F", 0, "Fmaj7");
    assertEquals("held against the chord", role(1, major, 0, 1, 60, 1, 1, 68, 2, 1, 72));
  }

  @Test
  void without_a_key_home_is_a_dominant_that_does_not_go_home() {
    assertEquals("blue note", role(1, changes("", 0, "C7"), 0, 1, 67, 1, 1, 63, 2, 1, 70));
    assertNotEquals(
        "blue note",
        role(1, changes("", 0, "C7", 4, "Fmaj7"), 0, 1, 67, 1, 1, 63, 2, 1, 70),
        "up a fourth");
    assertEquals(
        "held against the chord", role(1, changes("", 0, "Cmaj7"), 0, 1, 67, 1, 1, 63, 2, 1, 71));
  }

  /** Over the ii of a cadence B is the note that some teach and others keep for the dominant. */
  private static final Changes CADENCE = changes("C", 0, "Dm7", 4, "G7", 8, "Cmaj7");

  @Test
  void a_disputed_note_leads_on_where_it_can_and_colours_where_it_cannot() {
    assertEquals("tension", role(1, CADENCE, 0, 0.5, 62, 0.5, 0.5, 71, 1, 0.5, 65));
    HeardNote leads = heard(1, CADENCE, 0, 0.5, 69, 0.5, 0.5, 71, 1, 0.5, 72);
    assertEquals(NoteRole.PASSING, leads.role());
    assertEquals(72, leads.goal().orElseThrow().pitch());
    assertEquals("tension", role(1, CADENCE, 0, 1, 62, 1, 1, 71, 2, 1, 72), "long enough to stay");
    assertEquals("anticipation", role(1, CADENCE, 3, 0.5, 65, 3.5, 0.5, 71, 4, 1, 71));
    assertEquals("tension", role(1, CADENCE, 3, 0.5, 65, 3.5, 0.4, 71, 4, 1, 65));
    assertEquals(0.7, heard(1, CADENCE, 0, 0.5, 62, 0.5, 0.5, 71, 1, 0.5, 65).sits(), 1e-12);
  }

  @Test
  void a_line_does_not_come_to_rest_on_a_disputed_note() {
    HeardNote passes = heard(1, CADENCE, 0, 0.5, 69, 0.5, 0.5, 70, 1, 0.5, 71, 1.5, 1, 72);
    assertEquals(NoteRole.PASSING, passes.role());
    assertEquals(72, passes.goal().orElseThrow().pitch());
  }

  @Test
  void every_goal_is_the_note_that_settles_it() {
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals(71, heard(1, c, 3, 1, 72, 4, 1, 72, 5, 1, 71).goal().orElseThrow().pitch());
    assertEquals(
        64, heard(1, CMAJ7, 0, 0.5, 64, 0.5, 0.5, 65, 1, 1, 64).goal().orElseThrow().pitch());
    for (int note = 1; note <= 2; note++) {
      HeardNote encloses = heard(note, CMAJ7, 0, 0.5, 72, 0.5, 0.5, 65, 1, 0.5, 63, 1.5, 1, 64);
      assertEquals(64, encloses.goal().orElseThrow().pitch());
    }
  }

  @Test
  void an_enclosure_may_begin_a_line_and_come_from_below_first() {
    assertEquals("enclosure", role(0, CMAJ7, 0, 0.5, 65, 0.5, 0.5, 63, 1, 1, 64));
    assertEquals("enclosure", role(0, CMAJ7, 0, 0.5, 63, 0.5, 0.5, 65, 1, 1, 64));
    assertEquals("enclosure", role(1, CMAJ7, 0, 0.5, 63, 0.5, 0.5, 65, 1, 1, 64));
    Changes minor = changes("", 0, "Cm7");
    assertNotEquals(
        "enclosure", role(1, minor, 0, 0.5, 65, 0.5, 0.5, 61, 1, 1, 63), "two whole steps");
  }

  @Test
  void legato_over_the_change_does_not_make_a_suspension_of_what_gave_way_before_it() {
    Changes c = changes("C", 0, "Dm7", 4, "G7");
    assertEquals("chord tone", role(0, c, 2, 2.5, 72, 3.5, 1, 71));
    assertEquals("suspension", role(0, c, 2, 2.5, 72, 4, 1, 71));
  }

  @Test
  void a_note_that_steps_aside_from_one_that_does_not_rest_is_no_neighbour() {
    assertEquals("outside", role(1, CMAJ7, 0, 0.5, 63, 0.5, 0.5, 61, 1, 1, 67));
  }

  @Test
  void a_note_may_give_way_to_one_that_comes_early() {
    // A flat is outside Cmaj7 and the root of the chord that it is early for.
    Changes c = changes("", 0, "Cmaj7", 4, "Abmaj7");
    HeardNote early = heard(1, c, 2, 0.5, 64, 3, 0.5, 70, 3.5, 1.5, 68);
    assertEquals(NoteRole.APPOGGIATURA, early.role());
    assertEquals(68, early.goal().orElseThrow().pitch());
    assertEquals("outside", role(1, c, 1, 0.5, 64, 2, 0.5, 70, 2.5, 0.5, 68, 3, 1, 64));
  }

  @Test
  void where_the_chords_fall_silent_anything_is_rest() {
    Changes c = changes("C", 0, "Cmaj7", 4, "N.C.");
    assertEquals("passing", role(1, c, 3, 0.5, 64, 3.5, 0.5, 65, 4, 1, 66));
    assertNotEquals("passing", role(1, CMAJ7, 3, 0.5, 64, 3.5, 0.5, 65, 4, 1, 66, 5, 1, 60));
  }

  @Test
  void a_dominant_goes_home_from_any_root_and_not_to_any_other_chord() {
    assertNotEquals(
        "blue note", role(1, changes("", 0, "D7", 4, "Gmaj7"), 0, 1, 69, 1, 1, 65, 2, 1, 72));
    assertEquals(
        "blue note", role(1, changes("", 0, "D7", 4, "Am7"), 0, 1, 69, 1, 1, 65, 2, 1, 72));
  }

  @Test
  void over_an_optional_chord_a_held_note_rubs_only_where_it_rubs_against_both() {
    Changes c = changes("C", 0, "Cmaj7", 2, "(Fmaj7)", 4, "Cmaj7");
    assertEquals("chord tone", role(0, c, 2, 2, 65));
    assertEquals("chord tone", role(0, c, 2, 2, 71));
    HeardNote rubs = heard(0, c, 2, 2, 63);
    assertEquals(NoteRole.HELD_AGAINST, rubs.role());
    assertEquals(0.2, rubs.sits(), 1e-12);
  }
}
