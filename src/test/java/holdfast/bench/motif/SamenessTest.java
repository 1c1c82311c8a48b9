package holdfast.bench.motif;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Ideas that are the same in other clothes are counted once, others twice: on pairs that nothing
 * was fitted on, whose making is known, played with the noise of a keyboard player's hands or of a
 * singer and the ear that hears him.
 */
class SamenessTest {

  private static final double LEAST = 0.95;
  private static final int PAIRS = 400;

  @ParameterizedTest
  @EnumSource(Performer.class)
  void ideas_in_other_clothes_count_once_and_ideas_of_their_own_twice(Performer performer) {
    SamenessScore score =
        SamenessScore.of(
            new LabelledSet(performer, IdeaMaker.WALK, Known.CHORDS_AND_PLAYER, false),
            PAIRS,
            JudgeBench.SEED);
    score.once().forEach((dress, part) -> assertTrue(part >= LEAST, dress + ": " + score));
    assertTrue(score.twice() >= LEAST, score.toString());
  }
}
