package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Ornaments as every player knows them: neighbours, grace notes, turns. */
class OrnamentAlignerTest {

  private static final Line IDEA = Lines.even(60, 67, 64, 69);
  private static final double SLIP = Math.log(0.02);

  private static OrnamentAligner aligner(Line phrase) {
    RhythmModel rhythm = new RhythmModel(Player.KEYBOARD, 1);
    Ground[] grounds = Lines.everywhere(Ground.UNKNOWN, phrase);
    return new OrnamentAligner(
        IDEA, phrase, new Background(IDEA, phrase, grounds, rhythm, new Scales()), rhythm, SLIP);
  }

  private static double[] notes(Line phrase) {
    return new PitchMaps(
            phrase,
            Lines.everywhere(Ground.UNKNOWN, phrase),
            new Intonation(Player.KEYBOARD, 1, false),
            new Scales())
        .literal(IDEA)
        .notes();
  }

  private static double score(double[] onsets, int... pitches) {
    Line phrase = Lines.at(onsets, pitches);
    return aligner(phrase).align(notes(phrase), 1);
  }

  private static int[] path(double[] onsets, int... pitches) {
    Line phrase = Lines.at(onsets, pitches);
    OrnamentAligner aligner = aligner(phrase);
    aligner.align(notes(phrase), 1);
    return aligner.path();
  }

  private static final double PLAIN = score(new double[] {0, 1, 2, 3}, 60, 67, 64, 69);

  @Test
  void without_ornaments_it_agrees_with_any_alignment() {
    double[][] onsets = {{0, 1, 2, 3}, {0, 1.04, 2.1, 3}, {0, 1, 3}, {0, 2, 3}, {0, 1, 2}};
    int[][] pitches = {
      {60, 67, 64, 69}, {60, 67, 65, 69}, {60, 67, 69}, {60, 64, 69}, {60, 67, 64}
    };
    for (int c = 0; c < onsets.length; c++) {
      Line phrase = Lines.at(onsets[c], pitches[c]);
      RhythmModel rhythm = new RhythmModel(Player.KEYBOARD, 1);
      Background background =
          new Background(
              IDEA, phrase, Lines.everywhere(Ground.UNKNOWN, phrase), rhythm, new Scales());
      Aligner any = new Aligner(4, phrase, background);
      double expected =
          any.align(
              notes(phrase),
              new double[0],
              any.pacing(IDEA, 1, rhythm, Edges.whole(4, phrase.size, SLIP)));
      assertEquals(expected, score(onsets[c], pitches[c]), 1e-9, "case " + c);
    }
  }

  /**
   * Some pitch or other it has: all of them together are one more ornament (even odds), before or
   * on the beat (even odds), anywhere in .6 of a pulse.
   */
  @Test
  void an_ornament_takes_its_share_whatever_its_pitch() {
    double front = 0;
    double inside = 0;
    for (int pitch = 36; pitch <= 96; pitch++) {
      front += Math.exp(score(new double[] {-0.2, 0, 1, 2, 3}, pitch, 60, 67, 64, 69) - PLAIN);
      inside += Math.exp(score(new double[] {0, 0.8, 1, 2, 3}, 60, pitch, 67, 64, 69) - PLAIN);
    }
    assertEquals(0.25 / 0.6, front, 0.02);
    assertEquals(0.25 / 0.6, inside, 0.02);
  }

  private static double ornament(int pitch) {
    return score(new double[] {0, 0.8, 1, 2, 3}, 60, pitch, 67, 64, 69);
  }

  @Test
  void a_neighbour_is_likelier_than_a_third_and_a_third_than_a_leap() {
    assertEquals(ornament(68), ornament(66), 0.3);
    assertTrue(ornament(65) > ornament(64));
    assertTrue(ornament(70) > ornament(72));
    assertTrue(ornament(71) > ornament(72));
    assertTrue(ornament(67) < ornament(66), "the same note again adorns nothing");
  }

  @Test
  void an_ornament_is_short_with_some_room() {
    double within = score(new double[] {0, 0.45, 1, 2, 3}, 60, 68, 67, 64, 69);
    double longer = score(new double[] {0, 0.24, 1, 2, 3}, 60, 68, 67, 64, 69);
    assertEquals(ornament(68), within, 0.01);
    // Two of the limit's widths too long.
    assertEquals(-2, longer - within, 0.1);
  }

  @Test
  void it_is_found_before_its_note_or_on_the_beat_with_the_note_late() {
    int[] one = {0, -1, 1, 2, 3};
    assertArrayEquals(one, path(new double[] {0, 0.8, 1, 2, 3}, 60, 68, 67, 64, 69));
    assertArrayEquals(one, path(new double[] {0, 1, 1.25, 2, 3}, 60, 68, 67, 64, 69));
    assertEquals(ornament(68), score(new double[] {0, 1, 1.25, 2, 3}, 60, 68, 67, 64, 69), 0.01);
    assertArrayEquals(
        new int[] {-1, 0, 1, 2, 3}, path(new double[] {-0.2, 0, 1, 2, 3}, 59, 60, 67, 64, 69));
    assertArrayEquals(
        new int[] {0, -1, -1, -1, 1, 2, 3},
        path(new double[] {0, 0.4, 0.6, 0.8, 1, 2, 3}, 60, 67, 69, 66, 67, 64, 69));
    assertArrayEquals(
        new int[] {0, 1, -1, -1, 2, 3},
        path(new double[] {0, 1, 1.6, 1.8, 2, 3}, 60, 67, 65, 63, 64, 69));
  }

  @Test
  void four_small_notes_before_one_or_two_in_front_are_more_than_ornaments() {
    double three = score(new double[] {0, 0.4, 0.6, 0.8, 1, 2, 3}, 60, 66, 69, 66, 67, 64, 69);
    double four =
        score(new double[] {0, 0.2, 0.4, 0.6, 0.8, 1, 2, 3}, 60, 66, 69, 66, 69, 67, 64, 69);
    assertTrue(four < three - 6, three + " " + four);
    double two = score(new double[] {-0.4, -0.2, 0, 1, 2, 3}, 58, 59, 60, 67, 64, 69);
    assertTrue(two < PLAIN - 15, "" + two);
  }

  @Test
  void the_last_note_is_no_ornament() {
    double after = score(new double[] {0, 1, 2, 3, 3.2}, 60, 67, 64, 69, 70);
    assertTrue(after < PLAIN - 5, "" + after);
  }

  @Test
  void a_slower_idea_is_adorned_at_its_own_pace() {
    Line phrase = Lines.at(new double[] {0, 2, 3.8, 4, 6}, 60, 67, 65, 64, 69);
    OrnamentAligner aligner = aligner(phrase);
    assertTrue(aligner.align(notes(phrase), 2) > aligner.align(notes(phrase), 1) + 10);
    aligner.align(notes(phrase), 2);
    assertEquals("[0, 1, -1, 2, 3]", Arrays.toString(aligner.path()));
  }
}
