package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Forms of a motif as textbooks define them (Schoenberg, Fundamentals of Musical Composition, ch.
 * III, from memory), beside the seventeen of the trade table.
 */
class FormsTest {

  /** G A C A E, as in the table. */
  private static final int[] IDEA = {67, 69, 72, 69, 64};

  private static final Context IN_C =
      Context.over(
          Changes.vamp(Harmony.parse("C6"), Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);

  private static Verdict judge(Context context, List<Note> phrase) {
    return new MotifJudge()
        .compare(Motif.over(Harmony.parse("C6"), Written.typical(0, IDEA)), phrase, context);
  }

  private static Verdict judge(double[] onsets, int... pitches) {
    return judge(IN_C, Written.line(8, onsets, pitches));
  }

  private static void check(Treatment treatment, String detail, Verdict verdict) {
    assertEquals(treatment, verdict.treatment(), verdict::toString);
    assertEquals(detail, verdict.detail(), verdict::toString);
  }

  @Test
  void the_end_of_the_idea_is_a_fragment_without_its_head() {
    Verdict end = judge(new double[] {0, 1, 1.5}, 72, 69, 64);
    check(Treatment.FRAGMENT, "", end);
    assertEquals(
        2, end.changes().stream().filter(c -> c.kind() == NoteChange.Kind.DROPPED).count());
    check(Treatment.FRAGMENT, "head", judge(new double[] {0, 0.5, 1}, 67, 69, 72));
  }

  @Test
  void the_head_again_and_again_is_a_fragment_so_many_times() {
    check(
        Treatment.FRAGMENT,
        "twice",
        judge(new double[] {0, 0.5, 1, 2, 2.5, 3}, 67, 69, 72, 67, 69, 72));
    check(
        Treatment.FRAGMENT,
        "3 times",
        judge(new double[] {0, 0.5, 1, 2, 2.5, 3, 4, 4.5, 5}, 67, 69, 72, 67, 69, 72, 67, 69, 72));
  }

  @Test
  void notes_before_the_whole_idea_extend_it_in_front() {
    check(
        Treatment.EXTENDED,
        "in front",
        judge(new double[] {0, 0.5, 1, 1.5, 2, 3, 3.5}, 60, 62, 67, 69, 72, 69, 64));
    check(
        Treatment.EXTENDED,
        "at the end",
        judge(new double[] {0, 0.5, 1, 2, 2.5, 4, 4.5}, 67, 69, 72, 69, 64, 62, 60));
  }

  @Test
  void the_same_pitches_in_a_rhythm_of_their_own_are_varied() {
    Verdict verdict = judge(new double[] {0, 1.5, 2, 3.5, 3.75}, IDEA);
    check(Treatment.CONTOUR_KEPT, "rhythm of its own", verdict);
    assertEquals(Family.VARIED, verdict.family());
  }

  @Test
  void the_same_unusual_rhythm_on_other_notes_is_its_rhythm_kept() {
    Verdict verdict = judge(new double[] {0, 0.5, 1, 2, 2.5}, 76, 62, 64, 60, 74);
    check(Treatment.RHYTHM_KEPT, "", verdict);
    assertTrue(verdict.carriesTheIdea());
  }

  @Test
  void the_idea_backwards_may_turn_its_rhythm_too() {
    // The steps of G A C A E are .5 .5 1 .5; from its end .5 1 .5 .5.
    check(
        Treatment.RETROGRADE,
        "rhythm reversed too",
        judge(new double[] {0, 0.5, 1.5, 2, 2.5}, 64, 69, 72, 69, 67));
    check(Treatment.RETROGRADE, "", judge(Written.TYPICAL, 64, 69, 72, 69, 67));
  }

  @ParameterizedTest
  @CsvSource({"2", "1.5", "3", "4", "1.8"})
  void the_idea_slower_is_augmented_by_its_factor_and_faster_diminished(double factor) {
    double[] slow = new double[5];
    double[] fast = new double[5];
    for (int i = 0; i < 5; i++) {
      slow[i] = Written.TYPICAL[i] * factor;
      fast[i] = Written.TYPICAL[i] / factor;
    }
    Verdict augmented = judge(slow, IDEA);
    assertEquals(Treatment.AUGMENTED, augmented.treatment(), augmented::toString);
    assertEquals(factor, augmented.timeScale(), 0.01);
    if (factor == 1.8) {
      return; // so fast that half the time lies within what hands scatter
    }
    Verdict diminished = judge(fast, IDEA);
    assertEquals(Treatment.DIMINISHED, diminished.treatment(), diminished::toString);
    assertEquals(1 / factor, diminished.timeScale(), 0.01);
  }

  @Test
  void a_statement_a_little_slower_is_the_idea_at_another_tempo() {
    double[] slower = {0, 0.56, 1.12, 2.24, 2.8};
    Verdict verdict = judge(slower, IDEA);
    assertEquals(Treatment.LITERAL, verdict.treatment());
    assertEquals(1.12, verdict.timeScale(), 0.001);
    double[] faster = {0, 0.44, 0.88, 1.76, 2.2};
    assertEquals(0.88, judge(faster, IDEA).timeScale(), 0.001);
    assertEquals(1, judge(new double[] {0, 0.51, 1.02, 2.04, 2.55}, IDEA).timeScale(), "a hair");
  }

  @Test
  void upside_down_by_semitones_or_by_steps_of_the_scale() {
    // G A C A E about G: G F D F B flat by semitones, G F D F B in C major.
    check(Treatment.INVERTED, "", judge(Written.TYPICAL, 67, 65, 62, 65, 70));
    check(Treatment.INVERTED, "by scale steps", judge(Written.TYPICAL, 67, 65, 62, 65, 71));
    Verdict kept = judge(Written.TYPICAL, 67, 65, 62, 65, 71);
    assertTrue(
        kept.changes().stream().allMatch(c -> c.kind() == NoteChange.Kind.KEPT), kept::toString);
  }

  @Test
  void three_slow_notes_between_its_own_are_no_ornament() {
    Verdict verdict = judge(new double[] {0, 1, 2, 3, 4, 5, 6, 7}, 67, 60, 69, 76, 72, 61, 69, 64);
    assertNotEquals(Treatment.ORNAMENTED, verdict.treatment(), verdict::toString);
  }

  @Test
  void ornaments_are_short_notes_between_its_own_and_nothing_is_missing() {
    Verdict grace = judge(new double[] {0, 0.5, 0.875, 1, 2, 2.5}, 67, 69, 71, 72, 69, 64);
    assertEquals(Treatment.ORNAMENTED, grace.treatment(), grace::toString);
    assertEquals(
        1, grace.changes().stream().filter(c -> c.kind() == NoteChange.Kind.ADDED).count());
    // As many notes as the idea has, none of them put in: no ornament.
    assertTrue(judge(Written.TYPICAL, IDEA).probabilities().get(Treatment.ORNAMENTED) < 0.001);
  }

  @Test
  void another_last_note_is_another_ending() {
    check(Treatment.CONTOUR_KEPT, "changed ending", judge(Written.TYPICAL, 67, 69, 72, 69, 60));
    check(Treatment.RHYTHM_KEPT, "changed ending", judge(Written.TYPICAL, 67, 69, 72, 69, 77));
  }

  @Test
  void the_idea_twelve_times_in_one_breath_is_the_idea() {
    int[] pitches = new int[60];
    for (int i = 0; i < 60; i++) {
      pitches[i] = IDEA[i % 5];
    }
    // A phrase far longer than the idea may still be nothing but the idea again and again.
    double[] again = new double[60];
    for (int i = 0; i < 60; i++) {
      again[i] = 4 * (i / 5) + Written.TYPICAL[i % 5];
    }
    assertEquals(Treatment.LITERAL, judge(again, pitches).treatment());
    assertEquals("12 times", judge(again, pitches).detail());
  }

  private static List<NoteChange.Kind> kinds(Verdict verdict) {
    return verdict.changes().stream().map(NoteChange::kind).toList();
  }

  @Test
  void a_note_that_is_missing_is_told_where_it_is_missed() {
    assertEquals(
        List.of(
            NoteChange.Kind.KEPT,
            NoteChange.Kind.KEPT,
            NoteChange.Kind.DROPPED,
            NoteChange.Kind.KEPT,
            NoteChange.Kind.KEPT),
        kinds(judge(new double[] {0, 0.5, 2, 2.5}, 67, 69, 69, 64)));
    assertEquals(
        List.of(
            NoteChange.Kind.KEPT,
            NoteChange.Kind.KEPT,
            NoteChange.Kind.KEPT,
            NoteChange.Kind.DROPPED,
            NoteChange.Kind.DROPPED),
        kinds(judge(new double[] {0, 0.5, 1}, 67, 69, 72)));
  }

  @Test
  void backwards_the_first_note_is_the_ideas_last() {
    Verdict backwards = judge(Written.TYPICAL, 64, 69, 72, 69, 67);
    for (int j = 0; j < 5; j++) {
      assertEquals(4 - j, backwards.changes().get(j).ideaNote().orElseThrow());
    }
    assertEquals(1, backwards.timeScale());
    Verdict moved = judge(Written.TYPICAL, 66, 71, 74, 71, 69);
    assertEquals(Treatment.RETROGRADE, moved.treatment(), moved::toString);
    assertEquals(2, moved.transposition());
  }

  @Test
  void the_slower_idea_may_move_or_leave_its_last_note_out() {
    Verdict missing = judge(new double[] {0, 1, 2, 4}, 67, 69, 72, 69);
    assertEquals(Treatment.AUGMENTED, missing.treatment(), missing::toString);
    assertEquals(2, missing.timeScale());
    Verdict moved = judge(new double[] {0, 1, 2, 4, 5}, 69, 71, 74, 71, 65);
    assertEquals(Treatment.AUGMENTED, moved.treatment(), moved::toString);
    assertEquals(1, moved.scaleSteps());
    Verdict up = judge(new double[] {0, 1, 2, 4, 5}, 79, 81, 84, 81, 76);
    assertEquals(Treatment.AUGMENTED, up.treatment(), up::toString);
    assertEquals(12, up.transposition());
  }

  @Test
  void six_times_as_slow_nobody_hears_it() {
    double[] slow = new double[5];
    for (int i = 0; i < 5; i++) {
      slow[i] = 6 * Written.TYPICAL[i];
    }
    assertNotEquals(Treatment.AUGMENTED, judge(slow, IDEA).treatment());
  }

  /** Common practice, no source: an ending is the smaller part of what it ends. */
  @Test
  void two_of_five_notes_may_be_an_ending_but_not_two_of_four() {
    Verdict five = judge(Written.TYPICAL, 67, 69, 72, 65, 76);
    assertEquals(ReshapedForms.CHANGED_ENDING, five.detail(), five::toString);
    List<Note> four = Written.line(0, FOUR, 67, 69, 72, 64);
    Verdict one = of(four, Written.line(8, FOUR, 67, 69, 72, 77));
    assertEquals(ReshapedForms.CHANGED_ENDING, one.detail(), one::toString);
    Verdict two = of(four, Written.line(8, FOUR, 67, 69, 62, 77));
    assertNotEquals(ReshapedForms.CHANGED_ENDING, two.detail(), two::toString);
  }

  private static final double[] FOUR = {0, 0.5, 1, 2.5};

  private static Verdict of(List<Note> idea, List<Note> phrase) {
    return new MotifJudge().compare(Motif.over(Harmony.parse("C6"), idea), phrase, IN_C);
  }

  /** Common practice, no source: from 4:3 on a listener hears other note values. */
  @Test
  void five_for_four_is_another_tempo_and_three_for_two_are_other_note_values() {
    for (double factor : new double[] {1.25, 1.5}) {
      double[] slower = Arrays.stream(Written.TYPICAL).map(beat -> beat * factor).toArray();
      double[] faster = Arrays.stream(Written.TYPICAL).map(beat -> beat / factor).toArray();
      boolean tempo = factor < 4 / 3.0;
      assertEquals(
          tempo ? Treatment.LITERAL : Treatment.AUGMENTED, judge(slower, IDEA).treatment());
      assertEquals(
          tempo ? Treatment.LITERAL : Treatment.DIMINISHED, judge(faster, IDEA).treatment());
    }
  }

  /** Common practice, no source: what is said twice may be said with any breath between. */
  @Test
  void the_head_said_twice_may_take_a_long_breath_between_but_keeps_its_rhythm_inside() {
    check(
        Treatment.FRAGMENT,
        "twice",
        judge(new double[] {0, 0.5, 1, 4.7, 5.2, 5.7}, 67, 69, 72, 67, 69, 72));
    Verdict uneven = judge(new double[] {0, 0.9, 1.1, 4.7, 6.2, 6.4}, 67, 69, 72, 67, 69, 72);
    assertNotEquals("twice", uneven.detail(), uneven::toString);
  }

  @Test
  void a_moved_idea_with_another_ending_is_moved_as_most_of_its_notes_are() {
    Verdict verdict = judge(Written.TYPICAL, 72, 74, 77, 74, 65);
    assertEquals(Treatment.CONTOUR_KEPT, verdict.treatment(), verdict::toString);
    assertEquals(5, verdict.transposition());
  }
}
