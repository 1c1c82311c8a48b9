package holdfast.bench.listening;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Our scores against mir_eval's own answers, and small cases worked by hand. */
class ScoresTest {

  private static final double TOLERANCE = 1e-6;

  /** One case of a reference file: two rows of numbers and mir_eval's scores. */
  private record Case(List<Double> reference, List<Double> estimate, List<Double> scores) {}

  @Test
  void frame_scores_equal_those_of_mir_eval() throws IOException {
    for (Case c : cases("mir_eval-melody.txt")) {
      FrameScore score = FrameScore.of(hertz(c.reference), hertz(c.estimate));
      assertAll(
          () -> assertEquals(c.scores.get(0), score.voicingRecall(), TOLERANCE),
          () -> assertEquals(c.scores.get(1), score.voicingFalseAlarm(), TOLERANCE),
          () -> assertEquals(c.scores.get(2), score.rawPitchAccuracy(), TOLERANCE),
          () -> assertEquals(c.scores.get(3), score.rawChromaAccuracy(), TOLERANCE),
          () -> assertEquals(c.scores.get(4), score.overallAccuracy(), TOLERANCE));
    }
  }

  @Test
  void note_scores_equal_those_of_mir_eval() throws IOException {
    for (Case c : cases("mir_eval-notes.txt")) {
      NoteScore plain = NoteScore.withoutOffsets(notes(c.reference), notes(c.estimate));
      NoteScore whole = NoteScore.withOffsets(notes(c.reference), notes(c.estimate));
      assertAll(
          () -> assertEquals(c.scores.get(0), plain.precision(), TOLERANCE),
          () -> assertEquals(c.scores.get(1), plain.recall(), TOLERANCE),
          () -> assertEquals(c.scores.get(2), plain.f1(), TOLERANCE),
          () -> assertEquals(c.scores.get(3), whole.precision(), TOLERANCE),
          () -> assertEquals(c.scores.get(4), whole.recall(), TOLERANCE),
          () -> assertEquals(c.scores.get(5), whole.f1(), TOLERANCE));
    }
  }

  /** Worked by hand from mir_eval's definitions: four frames, one right, one an octave off. */
  @Test
  void an_octave_error_costs_pitch_but_not_chroma() {
    FrameScore score =
        FrameScore.of(new double[] {440, 0, 220, 220}, new double[] {440.1, -330, 440, 330});
    assertEquals(new FrameScore(1, 0, 1 / 3.0, 2 / 3.0, 0.5), score);
  }

  /** Worked by hand: one heard note cannot stand for two true ones. */
  @Test
  void one_heard_note_matches_one_true_note_at_most() {
    List<TrueNote> truth = List.of(new TrueNote(0, 0.1, 440), new TrueNote(0.04, 0.2, 440));
    NoteScore score = NoteScore.withoutOffsets(truth, List.of(new TrueNote(0.02, 0.1, 440)));
    assertEquals(new NoteScore(1, 0.5, 2 / 3.0), score);
  }

  private static double[] hertz(List<Double> row) {
    return row.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static List<TrueNote> notes(List<Double> flat) {
    List<TrueNote> notes = new ArrayList<>();
    for (int i = 0; i < flat.size(); i += 3) {
      notes.add(new TrueNote(flat.get(i), flat.get(i + 1), flat.get(i + 2)));
    }
    return notes;
  }

  private static List<Case> cases(String name) throws IOException {
    try (InputStream in = ScoresTest.class.getResourceAsStream("/reference/" + name)) {
      List<List<Double>> rows =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#") && !line.equals("case"))
              .map(line -> line.substring(line.indexOf(' ') + 1).split(" "))
              .map(words -> Arrays.stream(words).map(Double::valueOf).toList())
              .toList();
      List<Case> cases = new ArrayList<>();
      for (int i = 0; i < rows.size(); i += 3) {
        cases.add(new Case(rows.get(i), rows.get(i + 1), rows.get(i + 2)));
      }
      return cases;
    }
  }
}
