package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Held against the worked adaptations of the trade (reference/adaptations.txt). */
class WorkedAdaptationsFitTest {

  private static Fit fit(WorkedAdaptations.Answer answer) {
    return FitJudge.judge(answer.notes(), answer.changes()).fit().orElseThrow();
  }

  private static List<WorkedAdaptations.Answer> rows(String role) {
    return WorkedAdaptations.all().stream().filter(a -> a.role().equals(role)).toList();
  }

  @Test
  void the_examples_are_all_there() {
    assertEquals(12, rows("idea").size());
    assertEquals(24, rows("accepted").size());
    assertEquals(9, rows("hard").size());
    assertEquals(3, rows("soft").size());
  }

  @Test
  void every_idea_sits_in_its_own_chord() {
    rows("idea").forEach(a -> assertTrue(fit(a).sits(), a + " " + fit(a)));
  }

  @Test
  void every_accepted_answer_sits() {
    rows("accepted").forEach(a -> assertTrue(fit(a).sits(), a + " " + fit(a)));
  }

  @Test
  void no_answer_that_is_rejected_outright_sits() {
    rows("hard").forEach(a -> assertTrue(!fit(a).sits(), a + " " + fit(a)));
  }
}
