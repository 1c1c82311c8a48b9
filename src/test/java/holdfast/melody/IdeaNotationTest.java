package holdfast.melody;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** The notation is the project's own, so its definition is the authority here. */
class IdeaNotationTest {

  @Test
  void a_line_of_notes_is_read_one_after_another_and_a_missing_length_is_a_beat() {
    assertEquals(
        List.of(
            new Note(0, 0.5, 67),
            new Note(0.5, 0.5, 69),
            new Note(1, 1, 72),
            new Note(2, 1, 69),
            new Note(3, 1.5, 64)),
        IdeaNotation.parse("G4/0.5 A4/0.5 C5 A4 E4/1.5"));
  }

  @Test
  void what_stands_before_the_bar_line_is_the_pick_up() {
    assertEquals(
        List.of(new Note(-0.5, 0.5, 67), new Note(0, 0.75, 69), new Note(0.75, 0.25, 72)),
        IdeaNotation.parse("G4/0.5 | A4/.75 C5/0.25"));
  }

  @Test
  void rests_take_time_and_make_no_note() {
    assertEquals(
        List.of(new Note(0.5, 1, 60), new Note(3.5, 1, 58)),
        IdeaNotation.parse("-/0.5 C4 -/2 Bb3"));
  }

  @Test
  void sharps_flats_and_their_signs_are_read_in_any_number() {
    // Scientific pitch names: C4 is middle C, MIDI note 60 (common practice, no source).
    assertEquals(
        List.of(61, 61, 58, 60, 64, 59, 0),
        IdeaNotation.parse("C#4 D♭4 Bb3 Dbb4 D♯♯4 cb4 C-1").stream().map(Note::pitch).toList());
  }

  @Test
  void fractions_of_a_beat_are_lengths_too() {
    List<Note> triplet = IdeaNotation.parse("C4/1/3 D4/1/3 E4/1/3 F4/2/3");
    assertEquals(1.0 / 3, triplet.get(0).durationBeats());
    assertEquals("C4/1/3 D4/1/3 E4/1/3 F4/2/3", IdeaNotation.print(triplet));
  }

  @Test
  void a_word_that_is_no_note_is_named_with_its_place_and_the_mend() {
    IdeaNotationException e =
        assertThrows(IdeaNotationException.class, () -> IdeaNotation.parse("G4 H4/0.5"));
    assertEquals(2, e.place());
    assertEquals(
        "idea, place 2: \"H4/0.5\" is not a note;"
            + " write letter, octave and beats such as Eb4/0.5, or a rest such as -/0.5",
        e.getMessage());
  }

  @Test
  void lengths_of_nothing_or_of_no_number_are_refused() {
    for (String text : List.of("C4/0", "C4/-1", "C4/x", "C4/", "C4/1/0", "C4/1e999", "C4/NaN")) {
      assertThrows(IdeaNotationException.class, () -> IdeaNotation.parse(text), text);
    }
  }

  @Test
  void nothing_at_all_two_bar_lines_and_notes_off_the_keyboard_are_refused() {
    for (String text : List.of("", "   ", "-/2", "|", "C4 | D4 | E4", "C-2", "A9")) {
      assertThrows(IdeaNotationException.class, () -> IdeaNotation.parse(text), text);
    }
  }

  @Test
  void a_note_held_across_the_bar_line_is_tied() {
    List<Note> held = List.of(new Note(-0.5, 1.5, 72), new Note(1, 1, 69));
    assertEquals("C5/0.5~ | C5 A4", IdeaNotation.print(held));
    assertEquals(held, IdeaNotation.parse("C5/0.5~ | C5 A4"));
  }

  @Test
  void a_tie_to_another_note_or_to_nothing_is_refused() {
    for (String text : List.of("C5~ D5", "C5~ -", "C5 D5~", "-~ -")) {
      assertThrows(IdeaNotationException.class, () -> IdeaNotation.parse(text), text);
    }
  }

  @Test
  void overlapping_notes_cannot_be_written_on_one_line() {
    assertThrows(
        IllegalArgumentException.class,
        () -> IdeaNotation.print(List.of(new Note(0, 2, 60), new Note(1, 1, 62))));
  }

  @Test
  void a_pick_up_alone_keeps_its_distance_to_the_bar_line() {
    assertEquals("C4/0.5 -/0.5 |", IdeaNotation.print(List.of(new Note(-1, 0.5, 60))));
  }

  @Property(tries = 500, seed = "20261125")
  void reading_what_was_printed_gives_the_same_notes(@ForAll("lines") List<Note> line) {
    String text = IdeaNotation.print(line);
    List<Note> back = IdeaNotation.parse(text);
    assertEquals(line.size(), back.size(), text);
    for (int i = 0; i < line.size(); i++) {
      assertEquals(line.get(i).onsetBeats(), back.get(i).onsetBeats(), 1e-6, text);
      assertEquals(line.get(i).durationBeats(), back.get(i).durationBeats(), 1e-6, text);
      assertEquals(line.get(i).pitch(), back.get(i).pitch(), text);
    }
    assertEquals(text, IdeaNotation.print(back));
  }

  @Provide
  Arbitrary<List<Note>> lines() {
    Arbitrary<Double> lengths =
        Arbitraries.of(0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 1 / 3.0, 2 / 3.0, 1 / 6.0, 0.2, 4.0);
    Arbitrary<Double> gaps = Arbitraries.of(0.0, 0.0, 0.0, 0.5, 1 / 3.0, 1.0);
    Arbitrary<double[]> steps =
        Combinators.combine(lengths, gaps, Arbitraries.integers().between(0, 127))
            .as((length, gap, pitch) -> new double[] {length, gap, pitch});
    Arbitrary<Double> starts = Arbitraries.of(0.0, -0.5, -1.0, -1 / 3.0, 0.5, 2.0);
    return Combinators.combine(starts, steps.list().ofMinSize(1).ofMaxSize(12))
        .as(
            (start, list) -> {
              List<Note> notes = new ArrayList<>();
              double cursor = start;
              for (double[] step : list) {
                notes.add(new Note(cursor, step[0], (int) step[2]));
                cursor += step[0] + step[1];
                if (Math.abs(cursor) < 1e-9) {
                  cursor = 0;
                }
              }
              return notes;
            });
  }
}
