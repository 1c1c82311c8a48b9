package holdfast.bench.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The judge on a small part of the held-out half, against the goals that a professional's trust
 * asks for. The whole set is measured by {@link JudgeBench}.
 */
class LabelledSetTest {

  private static final int SIZE = 1600;

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
      assertTrue(score.family() >= (keys ? 0.98 : 0.94), score::toString);
      assertTrue(score.calibrationError() <= 0.03, score::toString);
      assertTrue(score.passAtOnePercent() >= 0.90, score::toString);
    }
  }

  @ParameterizedTest
  @EnumSource(Performer.class)
  void the_same_seed_makes_the_same_cases(Performer performer) {
    LabelledSet set = new LabelledSet(performer, IdeaMaker.WALK, Known.CHORDS, false);
    assertEquals(set.make(50, 7), set.make(50, 7));
  }
}
