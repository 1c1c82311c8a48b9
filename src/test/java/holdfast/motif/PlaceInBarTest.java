package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where in the bar a restatement begins, against the idea. Common practice, no source: a musician
 * counts from the bar line that is nearest, and forward within the idea's own bar.
 */
class PlaceInBarTest {

  private static final int[] IDEA = {67, 69, 72, 69, 64};

  private static Verdict judge(double beatsPerBar, List<Note> phrase) {
    Changes changes = Changes.vamp(Harmony.parse("C6"), Optional.of(Key.parse("C")));
    return new MotifJudge()
        .compare(
            Motif.over(Harmony.parse("C6"), Written.typical(0, IDEA)),
            phrase,
            Context.over(changes, Player.KEYBOARD, beatsPerBar));
  }

  @ParameterizedTest
  @CsvSource({
    "4, 8, 0", "4, 4.25, 0.25", "4, 9, 1", "4, 6, 2", "4, 7, -1", "4, 7.5, -0.5", "4, 11, -1",
    "4, 1, 1", "4, 3, 3", "4, 3.75, -0.25", "3, 3, 0", "3, 4, 1", "3, 5, -1", "3, 12, 0",
    "5, 5, 0", "5, 7, 2", "5, 8, -2"
  })
  void it_is_counted_from_the_nearest_bar_line(double bar, double beat, double later) {
    Verdict verdict = judge(bar, Written.typical(beat, IDEA));
    assertEquals(Family.RESTATED, verdict.family(), verdict::toString);
    assertEquals(later, verdict.shiftBeats(), 1e-9);
  }

  @Test
  void who_leaves_out_the_first_note_begins_no_later_than_the_idea_would_have() {
    List<Note> phrase = Written.typical(8, IDEA);
    Verdict verdict = judge(4, phrase.subList(1, phrase.size()));
    assertEquals(0, verdict.shiftBeats(), 1e-9, verdict::toString);
  }

  @Test
  void a_first_note_that_comes_late_or_an_end_that_lingers_moves_nothing() {
    List<Note> late = new ArrayList<>(Written.typical(8, IDEA));
    late.set(0, new Note(8.25, 0.2, IDEA[0]));
    assertEquals(0, judge(4, late).shiftBeats(), 1e-9);
    double[] lingering = {0, 0.5, 1, 2, 2.75};
    assertEquals(0, judge(4, Written.line(8, lingering, IDEA)).shiftBeats(), 1e-9);
  }

  @Test
  void stretched_to_twice_its_length_it_begins_where_its_first_note_does() {
    double[] twice = {0, 1, 2, 4, 5};
    Verdict verdict = judge(4, Written.line(9, twice, IDEA));
    assertEquals(Treatment.AUGMENTED, verdict.treatment(), verdict::toString);
    assertEquals(1, verdict.shiftBeats(), 1e-9);
  }
}
