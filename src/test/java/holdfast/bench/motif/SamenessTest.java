package holdfast.bench.motif;

import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.motif.Treatment;
import holdfast.practice.invent.Sameness;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Ideas that are the same in other clothes are counted once, others twice: on the half of the
 * labelled set that nothing was fitted on, whose making is known, played with a keyboard player's
 * noise.
 */
class SamenessTest {

  private static final double LEAST = 0.95;
  private static final int CASES = 2000;
  private static final long SEED = 20261125;

  private final LabelledSet set =
      new LabelledSet(Performer.KEYBOARD, IdeaMaker.WALK, Known.CHORDS_AND_PLAYER, false);

  @Test
  void ideas_moved_paced_or_with_one_ornament_count_once() {
    Map<Treatment, int[]> counts = new EnumMap<>(Treatment.class);
    int same = 0;
    int all = 0;
    for (Case one : set.heldOut(2 * CASES, SEED)) {
      boolean asked =
          switch (one.made()) {
            case LITERAL, TRANSPOSED, AUGMENTED, DIMINISHED -> true;
            case ORNAMENTED -> one.phrase().size() == one.idea().notes().size() + 1;
            default -> false;
          };
      if (asked) {
        boolean found = isSame(one);
        int[] count = counts.computeIfAbsent(one.made(), t -> new int[2]);
        count[0] += found ? 1 : 0;
        count[1]++;
        same += found ? 1 : 0;
        all++;
      }
    }
    List<String> told = new ArrayList<>();
    counts.forEach((t, c) -> told.add(t + " " + c[0] + "/" + c[1]));
    assertTrue(all > 300 && same >= LEAST * all, same + " of " + all + ": " + told);
  }

  @Test
  void ideas_that_have_nothing_to_do_with_each_other_count_twice() {
    List<Case> others = new ArrayList<>(set.strangers(CASES / 4, SEED));
    set.heldOut(CASES, SEED).stream().filter(c -> c.made() == Treatment.NEW).forEach(others::add);
    int different = 0;
    for (Case one : others) {
      different += isSame(one) ? 0 : 1;
    }
    assertTrue(different >= LEAST * others.size(), different + " of " + others.size());
  }

  private static boolean isSame(Case one) {
    return new Sameness(one.context()).between(one.idea().notes(), one.phrase()).isPresent();
  }
}
