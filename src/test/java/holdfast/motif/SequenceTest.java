package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/**
 * The tonal sequence and the skew to the chord are what is taught: they are never under-credited.
 */
class SequenceTest {

  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};
  private static final MotifJudge JUDGE = new MotifJudge();

  private static int pitch(int step) {
    return 60 + 12 * Math.floorDiv(step, 7) + MAJOR[Math.floorMod(step, 7)];
  }

  @Property(tries = 300, seed = "20261125")
  void an_idea_moved_along_the_key_is_restated_with_or_without_its_chords(
      @ForAll @LongRange(min = 0, max = 100_000) long seed,
      @ForAll @IntRange(min = -4, max = 4) int by) {
    Random random = new Random(seed);
    int n = 4 + random.nextInt(3);
    double[] onsets = new double[n];
    int[] steps = new int[n];
    steps[0] = random.nextInt(7);
    for (int i = 1; i < n; i++) {
      onsets[i] = onsets[i - 1] + 0.5 * (1 + random.nextInt(3));
      steps[i] = steps[i - 1] + random.nextInt(7) - 3;
    }
    int[] idea = new int[n];
    int[] moved = new int[n];
    boolean rigid = true;
    for (int i = 0; i < n; i++) {
      idea[i] = pitch(steps[i]);
      moved[i] = pitch(steps[i] + by);
      rigid &= moved[i] - idea[i] == moved[0] - idea[0];
    }
    Treatment expected =
        by == 0 ? Treatment.LITERAL : rigid ? Treatment.TRANSPOSED : Treatment.SEQUENCE;
    List<Note> phrase = Written.line(8, onsets, moved);
    for (Context context : List.of(inC("G7"), Context.NOTES_ONLY)) {
      Verdict verdict = JUDGE.compare(Motif.of(Written.line(0, onsets, idea)), phrase, context);
      assertEquals(Family.RESTATED, verdict.family(), verdict::toString);
      assertTrue(
          verdict.treatment() == expected || verdict.probabilities().get(expected) > 0.05,
          verdict::toString);
    }
  }

  private static Context inC(String chord) {
    return Context.over(
        Changes.vamp(Harmony.parse(chord), Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
  }

  @Test
  void a_skew_by_scale_steps_onto_a_far_chord_is_a_sequence_in_place() {
    Verdict verdict =
        JUDGE.compare(
            Motif.over(Harmony.parse("Cmaj7"), Written.typical(0, 64, 67, 71, 69, 67)),
            Written.typical(4, 63, 67, 70, 68, 67),
            inC("Abmaj7"));
    assertEquals(Treatment.SEQUENCE, verdict.treatment());
    assertEquals(0, verdict.scaleSteps());
    assertEquals(
        List.of(
            NoteChange.Kind.MOVED_TO_FIT,
            NoteChange.Kind.KEPT,
            NoteChange.Kind.MOVED_TO_FIT,
            NoteChange.Kind.MOVED_TO_FIT,
            NoteChange.Kind.KEPT),
        verdict.changes().stream().map(NoteChange::kind).toList());
  }

  @Test
  void across_a_change_each_note_makes_way_for_its_own_chord_only() {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("Dm7"));
    chords.put(8.0, Harmony.parse("Fm7"));
    Context context = Context.over(Changes.through(chords, Optional.empty()), Player.KEYBOARD, 4);
    // The first two notes are a pick-up over the old chord, the A over the new one must give way.
    Verdict verdict =
        JUDGE.compare(
            Motif.over(Harmony.parse("Dm7"), Written.typical(0, 69, 67, 69, 67, 65)),
            Written.typical(7, 69, 67, 68, 67, 65),
            context);
    assertEquals(Treatment.SEQUENCE, verdict.treatment());
    List<NoteChange> moved = new ArrayList<>(verdict.changes());
    moved.removeIf(c -> c.kind() == NoteChange.Kind.KEPT);
    assertEquals(1, moved.size(), verdict::toString);
    assertEquals(NoteChange.Kind.MOVED_TO_FIT, moved.get(0).kind());
    assertEquals(-1, moved.get(0).semitones());
  }
}
