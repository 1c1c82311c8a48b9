package holdfast.bench.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The judge on a small part of the held-out half, against the goals that a professional's trust
 * asks for. The whole set is measured by {@link JudgeBench}.
 */
class LabelledSetTest {

  private static final int SIZE = 1600;

  private static final int TAKES = 200;

  private static JudgeScore heldOut(Performer performer, IdeaMaker maker) {
    LabelledSet set = new LabelledSet(performer, maker, Known.CHORDS_AND_PLAYER, true);
    return JudgeScore.of(
        set.heldOut(SIZE, JudgeBench.SEED), set.strangers(SIZE, JudgeBench.SEED + 1));
  }

  @ParameterizedTest
  @EnumSource(Performer.class)
  void the_goals_are_met_on_ideas_of_either_recipe(Performer performer) {
    boolean keys = performer == Performer.KEYBOARD;
    for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
      JudgeScore score = heldOut(performer, maker);
      assertTrue(score.treatment() >= (keys ? 0.95 : 0.88), score::toString);
      assertTrue(score.family() >= (keys ? 0.98 : 0.95), score::toString);
      assertTrue(score.calibrationError() <= 0.03, score::toString);
      assertTrue(score.passAtOnePercent() >= 0.90, score::toString);
    }
  }

  /**
   * Against the idea as it was meant the same judge comes to .92 and .95: no knowledge of it can do
   * better than that, and its opening alone leads to .86 and .91.
   */
  @Test
  void an_idea_that_was_sung_once_is_learnt_from_its_restatements() {
    for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
      LabelledSet set = new LabelledSet(Performer.SINGER, maker, Known.CHORDS_AND_PLAYER, false);
      TakeScore score = TakeScore.of(set.takes(TAKES, 8, JudgeBench.SEED + 2));
      assertTrue(score.hindsight().treatment() >= 0.88, score::toString);
      assertTrue(score.hindsight().family() >= 0.93, score::toString);
      assertTrue(score.live().treatment() > score.openingAlone().treatment(), score::toString);
      assertTrue(score.live().family() > score.openingAlone().family(), score::toString);
    }
  }

  @ParameterizedTest
  @EnumSource(Performer.class)
  void the_same_seed_makes_the_same_cases(Performer performer) {
    LabelledSet set = new LabelledSet(performer, IdeaMaker.WALK, Known.CHORDS, false);
    assertEquals(set.make(50, 7), set.make(50, 7));
  }
}
