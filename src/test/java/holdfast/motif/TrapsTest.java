package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Cases in which a judge that counts features goes wrong. Common practice, no source. */
class TrapsTest {

  private static final MotifJudge JUDGE = new MotifJudge();

  private static Verdict judge(List<Note> idea, List<Note> phrase) {
    return JUDGE.compare(Motif.of(idea), phrase, Context.NOTES_ONLY);
  }

  @Test
  void a_palindrome_turned_round_is_the_idea_again() {
    double[] even = {0, 1, 2, 3, 4};
    List<Note> idea = Written.line(0, even, 60, 64, 67, 64, 60);
    assertEquals(
        Treatment.LITERAL, judge(idea, Written.line(8, even, 60, 64, 67, 64, 60)).treatment());
  }

  @Test
  void an_arch_turned_round_is_retrograde_although_its_contour_is_the_same() {
    List<Note> idea = Written.typical(0, 67, 69, 72, 69, 64);
    Verdict verdict = judge(idea, Written.typical(8, 64, 69, 72, 69, 67));
    assertEquals(Treatment.RETROGRADE, verdict.treatment());
    assertEquals(1, verdict.evidence().contour());
  }

  @Test
  void the_idea_a_beat_late_is_literal_and_says_so() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    Verdict verdict = judge(idea, Written.typical(9, 62, 65, 69, 67, 65));
    assertEquals(Treatment.LITERAL, verdict.treatment());
    assertEquals(1, verdict.shiftBeats(), 1e-9);
  }

  @Test
  void an_entry_half_a_beat_early_counts_back_from_the_bar() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    Verdict verdict = judge(idea, Written.typical(15.5, 62, 65, 69, 67, 65));
    assertEquals(-0.5, verdict.shiftBeats(), 1e-9);
  }

  @Test
  void one_pitch_in_a_rhythm_moved_is_transposed() {
    List<Note> idea = Written.typical(0, 67, 67, 67, 67, 67);
    assertEquals(
        Treatment.TRANSPOSED, judge(idea, Written.typical(4, 65, 65, 65, 65, 65)).treatment());
  }

  @Test
  void an_octave_up_is_transposed_by_twelve() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    Verdict verdict = judge(idea, Written.typical(4, 74, 77, 81, 79, 77));
    assertEquals(Treatment.TRANSPOSED, verdict.treatment());
    assertEquals(12, verdict.transposition());
  }

  @Test
  void three_notes_that_share_only_their_evenness_with_a_tiny_idea_are_new() {
    double[] even = {0, 1, 2};
    List<Note> idea = Written.line(0, even, 60, 64, 62);
    assertEquals(Family.NEW, judge(idea, Written.line(4, even, 72, 65, 66)).family());
  }

  @Test
  void a_long_scale_run_is_new_and_called_a_run() {
    List<Note> idea = Written.typical(0, 67, 69, 72, 69, 64);
    double[] eighths = {0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5};
    Context context =
        Context.over(
            Changes.vamp(Harmony.parse("Cmaj7"), Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
    Verdict verdict =
        JUDGE.compare(
            Motif.over(Harmony.parse("Cmaj7"), idea),
            Written.line(8, eighths, 60, 62, 64, 65, 67, 69, 71, 72),
            context);
    assertEquals(Family.NEW, verdict.family());
    assertEquals(Material.SCALE_RUN, verdict.material());
  }

  @Test
  void a_broken_chord_a_repeated_note_and_a_chromatic_line_are_told_apart() {
    List<Note> idea = Written.typical(0, 67, 69, 72, 69, 64);
    double[] eighths = {0, 0.5, 1, 1.5, 2, 2.5};
    Context context =
        Context.over(
            Changes.vamp(Harmony.parse("Cmaj7"), Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
    Motif motif = Motif.over(Harmony.parse("Cmaj7"), idea);
    assertEquals(
        Material.ARPEGGIO,
        JUDGE.compare(motif, Written.line(8, eighths, 60, 64, 67, 71, 72, 76), context).material());
    assertEquals(
        Material.REPEATED_NOTE,
        JUDGE.compare(motif, Written.line(8, eighths, 60, 60, 60, 60, 60, 60), context).material());
    assertEquals(
        Material.CHROMATIC_LINE,
        JUDGE.compare(motif, Written.line(8, eighths, 60, 61, 62, 63, 64, 65), context).material());
  }

  @Test
  void the_idea_said_twice_in_one_breath_is_literal_twice() {
    double[] twice = {0, 0.5, 1, 2, 2.5, 4, 4.5, 5, 6, 6.5};
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    Verdict verdict = judge(idea, Written.line(8, twice, 62, 65, 69, 67, 65, 62, 65, 69, 67, 65));
    assertEquals(Treatment.LITERAL, verdict.treatment());
    assertEquals("twice", verdict.detail());
  }

  @Test
  void a_note_left_out_of_the_middle_does_not_hide_the_idea() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    double[] without = {0, 0.5, 2, 2.5};
    Verdict verdict = judge(idea, Written.line(8, without, 62, 65, 67, 65));
    assertNotEquals(Family.NEW, verdict.family());
    assertTrue(
        verdict.changes().stream().anyMatch(c -> c.kind() == NoteChange.Kind.DROPPED),
        verdict::toString);
  }

  @Test
  void slow_rubato_within_the_phrase_does_not_hide_the_idea() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    double[] rubato = {0, 0.54, 1.12, 2.3, 2.92};
    assertEquals(
        Treatment.LITERAL, judge(idea, Written.line(8, rubato, 62, 65, 69, 67, 65)).treatment());
  }

  @Test
  void one_note_is_judged_without_complaint() {
    Verdict verdict = judge(Written.typical(0, 62, 65, 69, 67, 65), Written.typical(8, 62));
    assertEquals(1, verdict.probabilities().values().stream().mapToDouble(p -> p).sum(), 1e-9);
    judge(Written.typical(0, 62), Written.typical(8, 62, 64));
    judge(Written.typical(0, 62), Written.typical(8, 62));
  }

  @Test
  void two_notes_at_one_moment_are_judged_without_complaint() {
    List<Note> chordal = List.of(new Note(0, 1, 60), new Note(0, 1, 64), new Note(0, 1, 67));
    Verdict verdict = judge(chordal, chordal);
    assertEquals(Treatment.LITERAL, verdict.treatment());
  }

  @Test
  void a_phrase_without_notes_is_refused_in_words() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> judge(Written.typical(0, 62), List.of()));
    assertEquals("a phrase needs at least one note", refused.getMessage());
  }

  @Test
  void a_phrase_of_thousands_of_notes_is_new_and_soon_judged() {
    double[] onsets = new double[5000];
    int[] pitches = new int[5000];
    for (int i = 0; i < onsets.length; i++) {
      onsets[i] = 0.5 * i;
      pitches[i] = 60 + (i * 7) % 12;
    }
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    assertEquals(Family.NEW, judge(idea, Written.line(8, onsets, pitches)).family());
  }

  @Test
  void an_idea_that_is_no_small_idea_is_refused_in_words() {
    double[] onsets = new double[129];
    for (int i = 0; i < onsets.length; i++) {
      onsets[i] = i;
    }
    List<Note> long129 = Written.line(0, onsets, new int[129]);
    assertEquals(
        "an idea is small: at most 128 notes, not 129",
        assertThrows(IllegalArgumentException.class, () -> judge(long129, long129)).getMessage());
  }
}
