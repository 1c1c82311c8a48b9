package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * Values worked by hand from the definition of graded interval edit distance: an interval that is d
 * semitones off costs min(1, d/3), one too many or too few costs 1, over the longer length. The
 * definition is from published comparisons with listeners' ratings of sung copies.
 */
class SimilarityTest {

  private static Line line(int... pitches) {
    return Line.of(Written.typical(0, pitches), 0.5);
  }

  @Test
  void one_semitone_off_in_one_of_four_intervals_and_its_return_costs_a_sixth() {
    assertEquals(
        1 - (1 / 3.0 + 1 / 3.0) / 4,
        Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 71, 69, 64)),
        1e-12);
  }

  @Test
  void three_semitones_off_or_more_cost_one() {
    assertEquals(
        1 - 1.0 / 4,
        Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 72, 69, 57)),
        1e-12);
  }

  @Test
  void a_missing_note_at_the_end_costs_one_interval() {
    assertEquals(
        1 - 1.0 / 4, Similarity.intervals(line(67, 69, 72, 69, 64), line(67, 69, 72, 69)), 1e-12);
  }

  @Test
  void degrees_do_not_mind_octaves() {
    assertEquals(1, Similarity.degrees(line(60, 64, 67), line(72, 64, 55)), 1e-12);
  }

  @Test
  void a_lone_note_has_no_intervals_to_differ_in_and_one_too_many_is_all_of_them() {
    assertEquals(1, Similarity.intervals(line(60), line(65)), 1e-12);
    assertEquals(0, Similarity.intervals(line(60), line(60, 64)), 1e-12);
    assertEquals(0, Similarity.intervals(line(60, 64), line(60)), 1e-12);
  }

  @Test
  void up_for_down_costs_one_and_up_for_the_same_note_a_half() {
    assertEquals(0.5, Similarity.contour(line(60, 64, 60), line(60, 64, 67)), 1e-12);
    assertEquals(0.75, Similarity.contour(line(60, 64, 60), line(60, 64, 64)), 1e-12);
    assertEquals(1, Similarity.contour(line(60, 64, 60), line(60, 72, 48)), 1e-12);
  }

  @Test
  void degrees_agree_in_any_octave() {
    assertEquals(1, Similarity.degrees(line(60, 64, 67), line(72, 52, 67)), 1e-12);
    assertEquals(2 / 3.0, Similarity.degrees(line(60, 64, 67), line(60, 65, 67)), 1e-12);
  }

  @Test
  void steps_of_the_scale_agree_where_semitones_do_not() {
    Ladder cMajor = Ladder.of(Lines.C_MAJOR);
    // C E G and D F A: a third and a third.
    assertEquals(1, Similarity.steps(line(60, 64, 67), line(62, 65, 69), cMajor), 1e-12);
    assertEquals(
        1 - (1 / 3.0) / 2, Similarity.steps(line(60, 64, 67), line(62, 65, 71), cMajor), 1e-12);
  }

  @Test
  void a_time_twice_or_half_as_long_is_no_agreement_and_its_root_is_half_of_one() {
    Line even = Lines.at(new double[] {0, 1, 2}, 60, 62, 64);
    assertEquals(
        0.5, Similarity.rhythm(even, Lines.at(new double[] {0, 1, 1.5}, 60, 62, 64), 1), 1e-9);
    assertEquals(
        0.5, Similarity.rhythm(even, Lines.at(new double[] {0, 1, 3}, 60, 62, 64), 1), 1e-9);
    double root = Math.sqrt(2);
    assertEquals(
        0.75,
        Similarity.rhythm(even, Lines.at(new double[] {0, 1, 1 + root}, 60, 62, 64), 1),
        1e-9);
    assertEquals(1, Similarity.rhythm(even, Lines.at(new double[] {0, 2, 4}, 60, 62, 64), 2), 1e-9);
    assertEquals(
        1, Similarity.rhythm(even, Lines.at(new double[] {0, 0.5, 1}, 60, 62, 64), 0.5), 1e-9);
  }

  /** Mixtures that told folk song motifs apart and followed listeners best; see the class. */
  @Test
  void with_a_key_degrees_and_steps_count_and_without_one_semitones() {
    Motif idea = Motif.of(Written.typical(0, 67, 69, 72, 69, 64));
    java.util.List<holdfast.melody.Note> phrase = Written.typical(4, 67, 69, 72, 69, 65);
    Context inC =
        new Context(
            java.util.Optional.empty(),
            java.util.Optional.of(holdfast.theory.Key.parse("C")),
            Player.KEYBOARD,
            4,
            Priors.START);
    MotifJudge judge = new MotifJudge();
    // One degree of five is another; one of four intervals is a step, or a semitone, off.
    assertEquals(
        0.5 * 4 / 5 + 0.3 * (1 - 1 / 12.0) + 0.2,
        judge.compare(idea, phrase, inC).similarity(),
        1e-9);
    assertEquals(
        0.6 * (1 - 1 / 12.0) + 0.4,
        judge.compare(idea, phrase, Context.NOTES_ONLY).similarity(),
        1e-9);
  }
}
