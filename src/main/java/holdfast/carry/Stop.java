package holdfast.carry;

import holdfast.theory.Harmony;
import java.util.List;

/**
 * One chord on the idea's way through a form.
 *
 * @param bar the bar of the form that the chord starts in, counted from 1
 * @param startBeat where the idea's bar starts, in beats of the form
 * @param harmony the chord
 * @param choices one or two ways for the idea, the likelier first
 */
public record Stop(int bar, double startBeat, Harmony harmony, List<Adaptation> choices) {

  /** Copies the list. */
  public Stop {
    choices = List.copyOf(choices);
    if (choices.isEmpty()) {
      throw new IllegalArgumentException("an idea has at least one way over " + harmony.text());
    }
  }
}
