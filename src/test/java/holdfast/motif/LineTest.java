package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A line's pulse, its evenness, its reversal. */
class LineTest {

  private static double pulse(String idea) {
    return Line.pulse(IdeaNotation.parse(idea));
  }

  @Test
  void the_pulse_is_the_shortest_note_value_that_counts() {
    assertEquals(0.5, pulse("C4/0.5 D4/0.5 E4 C4/2"), 1e-9, "eighth notes");
    assertEquals(1, pulse("C4 D4/2 E4 C4/4"), 1e-9, "quarters");
    assertEquals(3, pulse("C4/3"), 1e-9, "one note is its own pulse");
  }

  @Test
  void times_that_were_meant_alike_are_averaged_for_the_pulse() {
    List<Note> uneven =
        List.of(
            new Note(0, 0.4, 60),
            new Note(0.45, 0.4, 62),
            new Note(1, 0.4, 64),
            new Note(2, 0.4, 65));
    // .45 and .55 are eighth notes; the quarter is not.
    assertEquals(0.5, Line.pulse(uneven), 1e-9);
  }

  @Test
  void a_grace_note_is_no_pulse() {
    List<Note> grace =
        List.of(
            new Note(0, 0.05, 60), new Note(0.05, 1, 62), new Note(2, 1, 64), new Note(4, 1, 62));
    // No less than a sixteenth of the longest step.
    assertEquals(2 / 16.0, Line.pulse(grace), 1e-9);
    assertEquals(
        1.5, Line.pulse(List.of(new Note(0, 1.5, 60), new Note(0, 1.5, 64))), 1e-9, "a chord");
  }

  @Test
  void a_line_is_even_where_no_ear_tells_its_steps_apart() {
    assertTrue(Lines.at(new double[] {0, 1.05, 2, 3.1}, 60, 62, 64, 65).isEven());
    assertFalse(Lines.at(new double[] {0, 0.5, 1, 2}, 60, 62, 64, 65).isEven());
    assertFalse(Lines.at(new double[] {0, 1.5, 2, 3}, 60, 62, 64, 65).isEven());
    assertFalse(Lines.at(new double[] {0, 1, 2, 2.5}, 60, 62, 64, 65).isEven());
    assertTrue(Lines.even(60).isEven());
  }

  @Test
  void backwards_the_last_pitch_comes_first_in_the_old_rhythm_or_in_the_rhythm_turned_round() {
    Line line =
        Line.of(
            List.of(
                new Note(1, 0.4, 60, 10), new Note(1.5, 0.4, 64, -20), new Note(3, 0.9, 67, 30)),
            0.5);
    Line pitches = line.reversed(false);
    assertArrayEquals(new int[] {67, 64, 60}, pitches.pitch);
    assertArrayEquals(new double[] {30, -20, 10}, pitches.cents);
    assertArrayEquals(new double[] {2, 3, 6}, pitches.onset);
    Line all = line.reversed(true);
    // Two beats between the first two, then half a beat, in half beats.
    assertArrayEquals(new double[] {2, 5, 6}, all.onset, 1e-12);
    assertArrayEquals(new double[] {1.8, 0.8, 0.8}, all.duration, 1e-12);
    assertArrayEquals(new int[] {67, 64, 60}, all.pitch);
    assertEquals(4, line.span(), 1e-12);
  }

  @Test
  void only_a_voice_lies_beside_the_keys() {
    assertTrue(Line.of(List.of(new Note(0, 1, 60), new Note(1, 1, 62, 5)), 1).isTuned());
    assertFalse(Line.of(List.of(new Note(0, 1, 60), new Note(1, 1, 62)), 1).isTuned());
  }
}
