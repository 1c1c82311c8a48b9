package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ups and downs kept, sizes free. */
class ContourTest {

  private static final RhythmModel KEYS = new RhythmModel(Player.KEYBOARD, 1);
  private static final int[] ALL = {0, 1, 2, 3, 4};

  private static Background background(Line idea, Line phrase) {
    return new Background(
        idea, phrase, Lines.everywhere(Ground.UNKNOWN, phrase), KEYS, new Scales());
  }

  /** How likely the phrase's one interval is where the idea has {@code meant}. */
  private static double share(int meant, int step) {
    Line idea = Lines.even(60, 60 + meant);
    Line phrase = Lines.even(60, 60 + step);
    Background background = background(idea, phrase);
    Aligner aligner = new Aligner(2, phrase, background);
    return Math.exp(Contour.moves(idea, phrase, background, aligner)[aligner.cell(0, 0, 0, 0)]);
  }

  @ParameterizedTest
  @CsvSource({"0", "1", "-2", "4", "-7", "12"})
  void every_interval_is_met_by_some_interval_and_nearly_always_the_same_way(int meant) {
    double same = 0;
    double all = 0;
    for (int step = -48; step <= 48; step++) {
      double share = share(meant, step);
      all += share;
      same += Integer.signum(step) == Integer.signum(meant) ? share : 0;
    }
    assertEquals(0.97, same, 0.02);
    assertTrue(all > same + 0.005 && all <= 1.01, "" + all);
  }

  @Test
  void a_size_about_the_ideas_own_is_likelier_than_the_same_size_elsewhere() {
    assertTrue(share(5, 5) > share(2, 5));
    assertTrue(share(-9, -9) > share(-2, -9));
    assertTrue(share(12, 12) > share(12, 11));
    assertTrue(share(2, 3) > share(2, -3), "the other way");
    assertTrue(share(0, 0) > share(1, 0));
    assertTrue(share(30, 30) > 0 && share(30, 60) > 0, "beyond two octaves all is one size");
  }

  @Test
  void it_begins_somewhere_and_rather_about_the_ideas_own_place() {
    Line idea = Lines.even(64, 67);
    double sum = 0;
    for (int pitch = 40; pitch <= 90; pitch++) {
      Line phrase = Lines.even(pitch, 60);
      sum += Math.exp(Contour.starts(idea, phrase, background(idea, phrase))[0]);
    }
    assertEquals(1, sum, 0.01);
    Line phrase = Lines.even(67, 60);
    double[] starts = Contour.starts(idea, phrase, background(idea, phrase));
    assertTrue(starts[2] > starts[0], "G is nearer to the second note");
  }

  @Test
  void notes_that_are_passed_over_leave_the_interval_between_those_that_stay() {
    Line idea = Lines.even(60, 64, 67, 64);
    Line phrase = Lines.even(60, 62, 67, 60);
    Background background = background(idea, phrase);
    Aligner aligner = new Aligner(4, phrase, background);
    double[] moves = Contour.moves(idea, phrase, background, aligner);
    // The idea's third note after its first: up a fifth; the phrase's third after its first: too.
    assertEquals(share(7, 7), Math.exp(moves[aligner.cell(0, 0, 1, 1)]), 1e-12);
    assertEquals(share(4, 7), Math.exp(moves[aligner.cell(0, 0, 0, 1)]), 1e-12);
    assertEquals(share(-3, -7), Math.exp(moves[aligner.cell(2, 2, 0, 0)]), 1e-12);
    assertEquals(share(0, -7), Math.exp(moves[aligner.cell(1, 2, 1, 0)]), 1e-12);
  }

  @Test
  void ups_downs_and_repeated_notes_are_kept_or_not() {
    Line idea = Lines.even(67, 69, 72, 72, 64);
    assertTrue(Contour.kept(idea, Lines.even(60, 65, 66, 66, 50), ALL));
    assertFalse(Contour.kept(idea, Lines.even(60, 65, 66, 67, 50), ALL), "one step up too many");
    assertFalse(Contour.kept(idea, Lines.even(60, 65, 65, 65, 50), ALL), "one step up missing");
    assertTrue(Contour.neverTurned(idea, Lines.even(60, 65, 65, 67, 50), ALL));
    assertFalse(Contour.neverTurned(idea, Lines.even(60, 65, 66, 66, 68), ALL), "down became up");
    assertFalse(Contour.neverTurned(idea, Lines.even(60, 58, 66, 66, 58), ALL), "up became down");
  }

  @Test
  void notes_that_stand_for_none_of_the_ideas_are_passed_over() {
    Line idea = Lines.even(60, 64, 67);
    Line phrase = Lines.even(72, 60, 58, 64, 67);
    int[] ideaOf = {-1, 0, -1, 1, 2};
    assertTrue(Contour.kept(idea, phrase, ideaOf));
    assertEquals("", Contour.sizes(idea, phrase, ideaOf));
    assertFalse(Contour.kept(idea, Lines.even(72, 60, 58, 64, 63), ideaOf));
  }

  @Test
  void intervals_that_only_grow_are_widened_and_those_that_only_shrink_narrowed() {
    Line idea = Lines.even(67, 69, 72, 69, 64);
    assertEquals("intervals widened", Contour.sizes(idea, Lines.even(67, 69, 76, 69, 60), ALL));
    assertEquals("intervals narrowed", Contour.sizes(idea, Lines.even(67, 69, 71, 69, 67), ALL));
    assertEquals("", Contour.sizes(idea, Lines.even(67, 69, 72, 69, 64), ALL));
    assertEquals("", Contour.sizes(idea, Lines.even(67, 69, 74, 71, 70), ALL), "some of each");
  }
}
