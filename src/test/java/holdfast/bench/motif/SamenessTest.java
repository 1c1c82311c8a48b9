package holdfast.bench.motif;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Ideas that are the same in other clothes are counted once, others twice: on pairs that nothing
 * was fitted on, whose making is known, played with a keyboard player's noise.
 */
class SamenessTest {

  private static final double LEAST = 0.95;
  private static final int PAIRS = 400;

  private final SamenessScore score =
      SamenessScore.of(
          new LabelledSet(Performer.KEYBOARD, IdeaMaker.WALK, Known.CHORDS_AND_PLAYER, false),
          PAIRS,
          JudgeBench.SEED);

  @Test
  void ideas_moved_in_another_octave_paced_or_with_one_ornament_count_once() {
    score.once().forEach((dress, part) -> assertTrue(part >= LEAST, dress + ": " + score));
  }

  @Test
  void ideas_that_have_nothing_to_do_with_each_other_count_twice() {
    assertTrue(score.twice() >= LEAST, score.toString());
  }
}
