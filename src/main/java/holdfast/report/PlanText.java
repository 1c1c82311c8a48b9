package holdfast.report;

import holdfast.practice.Plan;
import holdfast.practice.Step;
import java.util.ArrayList;
import java.util.List;

/** What to practise next, as lines of a terminal: each step with its reason and its command. */
public final class PlanText {

  private PlanText() {}

  /** The lines. */
  public static List<String> of(Plan plan) {
    List<String> lines = new ArrayList<>(List.of("What to practise next:"));
    for (int i = 0; i < plan.steps().size(); i++) {
      Step step = plan.steps().get(i);
      lines.add("  " + (i + 1) + ". " + step.what() + ". " + step.why());
      lines.add("     " + step.command());
    }
    return List.copyOf(lines);
  }
}
