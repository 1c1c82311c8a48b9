package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.listening.StageContract;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What fingers do on a keyboard, and the line that is meant. The cases are common practice, no
 * source.
 */
class MonophonicLineTest extends StageContract {

  @Override
  protected Stage fresh() {
    MonophonicLine line = new MonophonicLine();
    return new Stage() {
      @Override
      public Heard hear(Heard heard) {
        return line.hear(heard);
      }

      @Override
      public Heard finish(double seconds) {
        return line.finish(seconds);
      }
    };
  }

  @Test
  void a_clean_line_is_left_as_it_is() {
    List<PlayedNote> clean =
        List.of(note(0, 0.5, 60), note(0.5, 0.9, 62), note(1.2, 1.3, 64), note(1.3, 2, 64));
    assertEquals(clean, MonophonicLine.of(clean));
  }

  @Test
  void in_legato_a_note_ends_where_the_next_begins() {
    assertLine(
        List.of(note(0, 0.5, 67), note(0.5, 1, 64), note(1, 1.5, 60)),
        note(0, 0.58, 67),
        note(0.5, 1.09, 64),
        note(1, 1.5, 60));
  }

  @Test
  void a_broken_chord_with_all_fingers_held_keeps_every_note() {
    // Down, as a beginner holds it: released together, the first finger last.
    assertLine(
        List.of(note(0, 0.4, 72), note(0.4, 0.8, 67), note(0.8, 2, 64)),
        note(0, 2.01, 72),
        note(0.4, 2, 67),
        note(0.8, 2, 64));
  }

  @Test
  void of_a_chord_the_top_note_is_the_lines() {
    assertLine(
        List.of(note(0, 0.5, 67), note(0.512, 1, 76), note(1, 1.5, 74)),
        note(0, 0.5, 67),
        note(0.5, 1, 72),
        note(0.505, 1, 67),
        note(0.512, 1, 76),
        note(1, 1.5, 74));
  }

  @Test
  void a_rolled_chord_is_one_note() {
    assertLine(
        List.of(note(0.09, 2, 72)),
        note(0, 2, 60),
        note(0.03, 2, 64),
        note(0.06, 2, 67),
        note(0.09, 2, 72));
  }

  @Test
  void octaves_are_one_note_near_to_the_line_so_far() {
    assertLine(
        List.of(note(0, 0.5, 60), note(0.5, 1, 62), note(1, 1.5, 64)),
        note(0, 0.5, 60),
        note(0.5, 1, 62),
        note(0.5, 1, 74),
        note(1, 1.5, 64));
  }

  @Test
  void a_line_in_octaves_throughout_is_told_in_the_upper_one() {
    assertLine(
        List.of(note(0, 0.5, 72), note(0.5, 1, 74), note(1, 1.5, 69)),
        note(0, 0.5, 60),
        note(0, 0.5, 72),
        note(0.5, 1, 62),
        note(0.5, 1, 74),
        note(1, 1.5, 57),
        note(1, 1.5, 69));
  }

  @Test
  void a_brushed_neighbour_key_under_a_held_note_is_no_note() {
    assertLine(
        List.of(note(0, 1, 64), note(1, 2, 67)),
        note(0, 1, 64),
        soft(0.4, 0.45, 65),
        note(1, 2, 67));
  }

  @Test
  void a_slip_just_before_its_note_is_no_note() {
    assertLine(
        List.of(note(0, 0.9, 60), note(1, 2, 67)),
        note(0, 0.9, 60),
        soft(0.94, 1.0, 66),
        note(1, 2, 67));
  }

  @Test
  void a_short_neighbour_that_is_as_loud_as_its_note_is_an_ornament_and_stays() {
    List<PlayedNote> mordent = List.of(note(0, 0.07, 67), note(0.07, 0.14, 69), note(0.14, 1, 67));
    assertEquals(mordent, MonophonicLine.of(mordent));
  }

  @Test
  void a_soft_short_note_that_stands_alone_is_a_ghost_note_and_stays() {
    List<PlayedNote> line = List.of(note(0, 0.3, 60), soft(0.5, 0.56, 62), note(1, 1.5, 60));
    assertEquals(line, MonophonicLine.of(line));
  }

  @Test
  void a_grace_note_crushed_into_its_note_leaves_the_note() {
    assertLine(List.of(note(0.03, 1, 67)), note(0, 0.06, 68), note(0.03, 1, 67));
  }

  @Test
  void chords_of_the_other_hand_under_a_held_note_are_not_the_line() {
    assertLine(
        List.of(note(0, 4, 76), note(4, 5, 74)),
        note(0, 4, 76),
        note(1, 1.5, 60),
        note(1, 1.5, 64),
        note(1, 1.5, 67),
        note(2.5, 3, 50),
        note(4, 5, 74));
  }

  @Test
  void thirds_played_legato_keep_their_top_notes() {
    assertLine(
        List.of(note(0, 0.5, 76), note(0.5, 1, 74), note(1, 1.5, 72)),
        note(0, 0.56, 76),
        note(0, 0.54, 72),
        note(0.5, 1.06, 74),
        note(0.5, 1.04, 71),
        note(1, 1.5, 72),
        note(1, 1.5, 69));
  }

  @Test
  void a_stuck_key_does_not_swallow_what_follows() {
    List<PlayedNote> line =
        MonophonicLine.of(List.of(note(0, 60, 72), note(12, 13, 60), note(20, 21, 48)));
    assertEquals(List.of(12.0, 20.0), line.stream().skip(1).map(PlayedNote::onsetSeconds).toList());
  }

  @Test
  void a_key_struck_twice_is_two_notes_though_the_first_off_comes_late() {
    List<PlayEvent> events = List.of(on(0, 60, 80), on(0.5, 60, 80), off(0.52, 60), off(1, 60));
    assertEquals(
        List.of(on(0, 60, 80), off(0.5, 60), on(0.5, 60, 80), off(1, 60)),
        run(events, List.of(4), 2));
  }

  @Test
  void a_stray_double_note_does_not_cut_a_phrase_short() {
    List<PlayedNote> line =
        MonophonicLine.of(
            List.of(
                note(0, 0.45, 60), note(0.5, 0.95, 62), soft(0.52, 0.58, 63), note(1, 1.6, 64)));
    assertEquals(List.of(60, 62, 64), line.stream().map(PlayedNote::pitch).toList());
    assertEquals(0.95, line.get(1).endSeconds(), 1e-9);
  }

  @Test
  void a_single_note_is_told_soon_after_its_onset() {
    MonophonicLine line = new MonophonicLine();
    line.hear(heard(1, on(1, 60, 80)));
    assertEquals(List.of(), line.hear(heard(1.05)).events());
    assertEquals(List.of(on(1, 60, 80)), line.hear(heard(1.08)).events());
    assertEquals(List.of(off(2, 60)), line.hear(heard(2.0, off(2, 60))).events());
    assertTrue(line.hear(heard(3)).upToSeconds() == 3);
  }

  private static void assertLine(List<PlayedNote> expected, PlayedNote... played) {
    List<PlayedNote> line = MonophonicLine.of(Arrays.asList(played));
    assertEquals(
        expected.stream().map(PlayedNote::pitch).toList(),
        line.stream().map(PlayedNote::pitch).toList());
    for (int i = 0; i < line.size(); i++) {
      assertEquals(expected.get(i).onsetSeconds(), line.get(i).onsetSeconds(), 1e-9);
      assertEquals(expected.get(i).endSeconds(), line.get(i).endSeconds(), 1e-9);
    }
  }

  private static PlayedNote note(double from, double to, int pitch) {
    return PlayedNote.key(from, to - from, pitch, 80);
  }

  private static PlayedNote soft(double from, double to, int pitch) {
    return PlayedNote.key(from, to - from, pitch, 25);
  }
}
