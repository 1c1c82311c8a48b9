package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Which move most pairs of notes propose. */
class VotesTest {

  private static int[] best(int most, int[] idea, int... phrase) {
    return Votes.best(idea, phrase, most);
  }

  private static final int[] IDEA = {60, 67, 64, 69, 61};

  @Test
  void the_move_that_every_note_makes_comes_first() {
    assertArrayEquals(new int[] {5}, best(1, IDEA, 65, 72, 69, 74, 66));
    assertEquals(3, best(3, IDEA, 65, 72, 69, 74, 66).length);
    assertArrayEquals(new int[] {0}, best(4, new int[] {60, 60}, 60, 60));
  }

  @Test
  void a_note_left_out_or_put_in_at_either_end_hides_nothing() {
    assertArrayEquals(new int[] {5}, best(1, IDEA, 72, 69, 74, 66));
    assertArrayEquals(new int[] {5}, best(1, IDEA, 65, 72, 69, 74));
    assertArrayEquals(new int[] {5}, best(1, IDEA, 50, 65, 72, 69, 74, 66));
    assertArrayEquals(new int[] {5}, best(1, IDEA, 65, 72, 69, 74, 66, 50));
    assertArrayEquals(new int[] {5}, best(1, IDEA, 50, 51, 65, 72, 69, 74, 66));
  }

  @Test
  void notes_in_their_own_places_outvote_notes_beside_theirs() {
    // Two notes moved by 3 in their places against three moved by 7 one place later.
    assertEquals(3, best(1, new int[] {60, 70, 50, 90}, 63, 73, 77, 57)[0]);
  }
}
