package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Where a statement of the idea may begin and end. */
class EdgesTest {

  private static final double NEVER = Double.NEGATIVE_INFINITY;
  private static final double SLIP = Math.log(0.01);

  @Test
  void in_the_whole_idea_each_note_that_is_missing_or_too_many_costs_one_slip() {
    Edges whole = Edges.whole(5, 7, SLIP);
    assertEquals(0, whole.lead(0));
    assertEquals(3 * SLIP, whole.lead(3), 1e-12);
    assertEquals(2 * SLIP, whole.trail(2), 1e-12);
    assertEquals(2 * SLIP, whole.leadAdds(2), 1e-12);
    assertEquals(6 * SLIP, whole.trailAdds(6), 1e-12);
    assertEquals(NEVER, whole.leadAdds(7), "more than the phrase has");
    assertEquals(NEVER, whole.trailAdds(7));
    assertEquals(SLIP, whole.drop());
    assertEquals(SLIP, whole.add());
  }

  @Test
  void a_head_begins_with_the_first_note_and_leaves_at_least_one_out_and_two_in() {
    Edges head = Edges.head(5, 3, SLIP);
    assertEquals(0, head.lead(0));
    assertEquals(NEVER, head.lead(1));
    assertEquals(NEVER, head.trail(0));
    double sum = 0;
    for (int left = 1; left <= 3; left++) {
      sum += Math.exp(head.trail(left));
    }
    assertEquals(1, sum, 1e-12, "each length alike");
    assertEquals(NEVER, head.trail(4));
    assertEquals(2 * SLIP, head.trailAdds(2), 1e-12);
    assertEquals(0, Edges.head(3, 3, SLIP).trail(1), 1e-12, "three notes have one head of two");
  }

  @Test
  void a_later_part_leaves_the_first_note_out_and_mostly_ends_with_the_idea() {
    Edges later = Edges.later(5, 3, SLIP);
    assertEquals(NEVER, later.lead(0));
    double lead = 0;
    double trail = Math.exp(later.trail(0));
    for (int left = 1; left <= 3; left++) {
      lead += Math.exp(later.lead(left));
      trail += Math.exp(later.trail(left));
    }
    assertEquals(1, lead, 1e-12);
    assertEquals(1, trail, 1e-12);
    assertTrue(later.trail(0) > later.trail(1) && later.trail(1) == later.trail(2));
    assertEquals(SLIP, later.leadAdds(1), 1e-12);
  }

  @Test
  void an_extension_adds_one_note_or_more_each_half_as_likely_as_the_last() {
    for (boolean after : new boolean[] {true, false}) {
      Edges edges = after ? Edges.extendedAfter(4, 60, SLIP) : Edges.extendedBefore(4, 60, SLIP);
      double sum = 0;
      for (int more = 1; more < 60; more++) {
        sum += Math.exp(after ? edges.trailAdds(more) : edges.leadAdds(more));
      }
      assertEquals(1, sum, 1e-12);
      assertEquals(NEVER, after ? edges.trailAdds(0) : edges.leadAdds(0));
      assertEquals(2 * SLIP, after ? edges.leadAdds(2) : edges.trailAdds(2), 1e-12);
      assertEquals(SLIP, edges.lead(1), 1e-12);
      assertEquals(SLIP, edges.trail(1), 1e-12);
    }
  }
}
