package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.harmony.FitJudge;
import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Ideas that teachers carried to a next chord. Source: reference/adaptations.txt (common practice,
 * no published source).
 */
class AdaptationsTest {

  private static final List<List<String>> ROWS = ReferenceNotes.rows("adaptations.txt");

  static Stream<Arguments> accepted() {
    return ROWS.stream()
        .filter(row -> row.get(4).equals("accepted"))
        .map(row -> Arguments.of(row.get(0) + " " + row.get(5), row));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("accepted")
  void an_accepted_adaptation_restates_the_idea(String name, List<String> row) {
    Verdict verdict = judge(row);
    assertEquals(Family.RESTATED, verdict.family(), verdict::toString);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("accepted")
  void an_accepted_adaptation_sits_in_its_chord(String name, List<String> row) {
    assertTrue(sits(row));
  }

  static Stream<Arguments> rejectedHard() {
    return ROWS.stream()
        .filter(row -> row.get(4).equals("hard"))
        .map(row -> Arguments.of(row.get(0) + " " + row.get(5), row));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rejectedHard")
  void a_rejected_one_is_no_restatement_that_fits(String name, List<String> row) {
    assertFalse(judge(row).family() == Family.RESTATED && sits(row));
  }

  private static boolean sits(List<String> row) {
    return FitJudge.judge(ReferenceNotes.notes(row.get(5), row.get(3)), changes(row))
        .fit()
        .orElseThrow()
        .sits();
  }

  private static Changes changes(List<String> row) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(-4.0, Harmony.parse(row.get(1)));
    chords.put(0.0, Harmony.parse(row.get(2)));
    return Changes.through(chords, Optional.empty());
  }

  private static Verdict judge(List<String> row) {
    List<String> idea =
        ROWS.stream()
            .filter(r -> r.get(0).equals(row.get(0)) && r.get(4).equals("idea"))
            .findFirst()
            .orElseThrow();
    Motif motif =
        Motif.over(Harmony.parse(row.get(1)), ReferenceNotes.notes(idea.get(5), idea.get(3)));
    Context context = Context.over(changes(row), Player.UNKNOWN, 4);
    return new MotifJudge().compare(motif, ReferenceNotes.notes(row.get(5), row.get(3)), context);
  }
}
