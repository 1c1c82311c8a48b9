package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Seventeen operations on one idea, as textbooks define them. Source:
 * reference/motif-operations.txt (Schoenberg, Fundamentals of Musical Composition, ch. III, and
 * theory glossaries).
 */
class MotifOperationsTest {

  private static final List<List<String>> ROWS = ReferenceNotes.rows("motif-operations.txt");

  static Stream<Arguments> operations() {
    return ROWS.stream().skip(1).map(row -> Arguments.of(row.get(0), row));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("operations")
  void with_its_chords_each_operation_gets_its_word(String name, List<String> row) {
    Context context =
        Context.over(
            Changes.vamp(Harmony.parse(row.get(3)), Optional.of(Key.parse("C"))),
            Player.UNKNOWN,
            4);
    check(row, context, Optional.of(Harmony.parse(ROWS.get(0).get(3))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("operations")
  void from_the_notes_alone_each_operation_gets_its_word(String name, List<String> row) {
    check(row, Context.NOTES_ONLY, Optional.empty());
  }

  private static void check(List<String> row, Context context, Optional<Harmony> chord) {
    List<String> idea = ROWS.get(0);
    Motif motif = new Motif(ReferenceNotes.notes(idea.get(1), idea.get(2)), chord);
    List<Note> phrase = ReferenceNotes.notes(row.get(1), row.get(2));
    Verdict verdict = new MotifJudge().compare(motif, phrase, context);
    String[] expected = row.get(4).split("/", -1);
    assertEquals(expected[0], verdict.treatment().word(), verdict::toString);
    assertTrue(
        List.of(expected[1].split(" ", -1)).contains(verdict.family().word()), verdict::toString);
    for (int i = 2; i < expected.length; i++) {
      String[] word = expected[i].split(" ", 2);
      switch (word[0]) {
        case "shift" -> assertEquals(Double.parseDouble(word[1]), verdict.shiftBeats(), 0.05);
        case "semitones" ->
            assertEquals(Integer.parseInt(word[1]), verdict.transposition(), verdict::toString);
        case "steps" ->
            assertEquals(Integer.parseInt(word[1]), verdict.scaleSteps(), verdict::toString);
        case "scale" -> assertEquals(Double.parseDouble(word[1]), verdict.timeScale(), 1e-9);
        case "detail" -> assertEquals(word[1], verdict.detail(), verdict::toString);
        default -> throw new IllegalStateException("unknown expectation " + expected[i]);
      }
    }
  }
}
