package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

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

/** What must not change a verdict. */
class UnchangingVerdictTest {

  private static final MotifJudge JUDGE = new MotifJudge();
  private static final String[] ROOTS = {
    "C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"
  };
  private static final String[] KINDS = {"maj7", "m7", "7", "m7b5", "7b9", "6"};

  /** An idea, what somebody made of it, the chords and the key. */
  private record Situation(
      List<Note> idea, List<Note> phrase, List<Integer> roots, List<String> kinds, int key) {

    static Situation of(long seed) {
      Random random = new Random(seed);
      List<Note> idea = line(random, 3 + random.nextInt(5), 0);
      List<Note> phrase = new ArrayList<>();
      if (random.nextInt(3) == 0) {
        phrase.addAll(line(random, 2 + random.nextInt(8), 8));
      } else {
        int by = random.nextInt(7) - 3;
        for (Note note : idea) {
          double late = 8 + 0.03 * random.nextGaussian();
          int off = random.nextInt(5) == 0 ? random.nextInt(3) - 1 : 0;
          phrase.add(
              new Note(note.onsetBeats() + late, note.durationBeats(), note.pitch() + by + off));
        }
        phrase.sort(java.util.Comparator.comparingDouble(Note::onsetBeats));
      }
      List<Integer> roots = List.of(random.nextInt(12), random.nextInt(12), random.nextInt(12));
      List<String> kinds =
          List.of(KINDS[random.nextInt(6)], KINDS[random.nextInt(6)], KINDS[random.nextInt(6)]);
      return new Situation(idea, phrase, roots, kinds, random.nextInt(12));
    }

    private static List<Note> line(Random random, int notes, double start) {
      List<Note> made = new ArrayList<>();
      double onset = start;
      int pitch = 57 + random.nextInt(15);
      for (int i = 0; i < notes; i++) {
        double step = (1 + random.nextInt(4)) * 0.5;
        made.add(new Note(onset, step * 0.9, pitch));
        onset += step;
        pitch += random.nextInt(9) - 4;
      }
      return made;
    }

    Verdict judge(int up, double stretch) {
      TreeMap<Double, Harmony> chords = new TreeMap<>();
      chords.put(0.0, chord(1, up));
      chords.put(10 * stretch, chord(2, up));
      Context context =
          new Context(
              Optional.of(Changes.through(chords, Optional.of(Key.parse(ROOTS[(key + up) % 12])))),
              Optional.of(Key.parse(ROOTS[(key + up) % 12])),
              Player.UNKNOWN,
              4 * stretch,
              Priors.START);
      return JUDGE.compare(
          Motif.over(chord(0, up), moved(idea, up, stretch)), moved(phrase, up, stretch), context);
    }

    private Harmony chord(int i, int up) {
      return Harmony.parse(ROOTS[(roots.get(i) + up) % 12] + kinds.get(i));
    }

    private static List<Note> moved(List<Note> notes, int up, double stretch) {
      return notes.stream()
          .map(x -> new Note(x.onsetBeats() * stretch, x.durationBeats() * stretch, x.pitch() + up))
          .toList();
    }
  }

  private static void same(Verdict one, Verdict other) {
    assertEquals(one.treatment(), other.treatment());
    assertEquals(one.family(), other.family());
    assertEquals(one.transposition(), other.transposition());
    assertEquals(one.scaleSteps(), other.scaleSteps());
    assertEquals(one.timeScale(), other.timeScale(), 1e-9);
    assertEquals(one.similarity(), other.similarity(), 1e-9);
    assertEquals(one.changes(), other.changes());
    one.probabilities()
        .forEach((t, p) -> assertEquals(p, other.probabilities().get(t), 1e-6, t.word()));
  }

  @Property(tries = 300, seed = "20261125")
  void transposing_chords_and_take_together_changes_nothing(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 11) int up) {
    Situation situation = Situation.of(seed);
    same(situation.judge(0, 1), situation.judge(up, 1));
  }

  @Property(tries = 300, seed = "20261125")
  void another_tempo_for_everything_changes_nothing(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 6) int quarters) {
    Situation situation = Situation.of(seed);
    double stretch = quarters / 2.0;
    Verdict one = situation.judge(0, 1);
    Verdict other = situation.judge(0, stretch);
    same(one, other);
    assertEquals(one.shiftBeats() * stretch, other.shiftBeats(), 1e-6);
  }

  @Property(tries = 300, seed = "20261125")
  void the_idea_itself_is_always_literal(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    List<Note> idea = Situation.of(seed).idea();
    Verdict verdict = JUDGE.compare(Motif.of(idea), idea, Context.NOTES_ONLY);
    assertEquals(Treatment.LITERAL, verdict.treatment());
    assertEquals(Family.RESTATED, verdict.family());
    assertEquals(1, verdict.similarity(), 1e-9);
    assertEquals(new Evidence(1, 1, 1), verdict.evidence());
  }

  @Property(tries = 200, seed = "20261125")
  void probabilities_sum_to_one(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Verdict verdict = Situation.of(seed).judge(0, 1);
    assertEquals(1, verdict.probabilities().values().stream().mapToDouble(p -> p).sum(), 1e-9);
  }

  @Property(tries = 100, seed = "20261125")
  void what_comes_later_never_changes_what_was_expected(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Situation one = Situation.of(seed);
    Situation other = Situation.of(seed + 1);
    Motif idea = Motif.of(one.idea());
    Predictability shorter = new Predictability(idea);
    Predictability longer = new Predictability(idea);
    Expectation before = shorter.hear(one.phrase(), Context.NOTES_ONLY);
    Expectation again = longer.hear(one.phrase(), Context.NOTES_ONLY);
    longer.hear(other.phrase(), Context.NOTES_ONLY);
    assertEquals(before, again);
  }
}
