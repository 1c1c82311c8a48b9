package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is likely before a phrase is heard. */
class PriorsTest {

  private static double sum(Priors priors) {
    double sum = 0;
    for (Treatment t : Treatment.values()) {
      sum += priors.share(t);
    }
    return sum;
  }

  @Test
  void at_the_start_all_shares_come_to_one_and_a_mirror_is_rarer_than_a_restatement() {
    assertEquals(1, sum(Priors.START), 1e-12);
    assertTrue(Priors.START.share(Treatment.INVERTED) < Priors.START.share(Treatment.LITERAL));
    assertTrue(Priors.START.share(Treatment.RETROGRADE) > 0);
  }

  @Test
  void after_twelve_phrases_half_of_what_is_expected_is_the_players_own() {
    List<holdfast.melody.Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    Verdict again = new MotifJudge().compare(Motif.of(idea), idea, Context.NOTES_ONLY);
    double literal = again.probabilities().get(Treatment.LITERAL);
    Priors after = Priors.after(Collections.nCopies(12, again));
    assertEquals(1, sum(after), 1e-9);
    assertEquals(
        (Priors.START.share(Treatment.LITERAL) + literal) / 2,
        after.share(Treatment.LITERAL),
        1e-9);
    assertEquals(
        Priors.START.share(Treatment.NEW), Priors.after(List.of()).share(Treatment.NEW), 1e-12);
  }
}
