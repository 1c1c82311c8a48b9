package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** What must hold of any line over any chords. */
class FitPropertiesTest {

  private static final List<String> CHORDS =
      List.of(
          "Cmaj7", "Dm7", "G7", "Bm7b5", "E7b9", "Am7", "F6", "Fm6", "Db7#11", "Edim7", "G7sus4",
          "C7", "F/G", "Caug", "G7alt", "N.C.", "(E7)", "Abmaj7");

  /** Lines of 1 to 24 notes, with rests, over 1 to 6 chords. */
  record Situation(List<Note> line, List<String> chords) {
    Changes changes(Optional<Interval> up) {
      TreeMap<Double, Harmony> starts = new TreeMap<>();
      for (int i = 0; i < chords.size(); i++) {
        Harmony harmony = Harmony.parse(chords.get(i));
        starts.put(i * 2.0, up.map(harmony::transpose).orElse(harmony));
      }
      Optional<Key> key = Optional.of(Key.parse("C"));
      return Changes.through(starts, up.isPresent() ? key.map(k -> k.transpose(up.get())) : key);
    }
  }

  @Property(tries = 400, seed = "20261125")
  void moving_line_and_chords_together_changes_nothing(
      @ForAll("situations") Situation s, @ForAll @IntRange(min = 1, max = 11) int semitones) {
    Interval up =
        Interval.up(
            NoteName.parse("C"),
            List.of("Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B").stream()
                .map(NoteName::parse)
                .toList()
                .get(semitones - 1));
    List<Note> moved =
        s.line().stream()
            .map(n -> new Note(n.onsetBeats(), n.durationBeats(), n.pitch() + semitones))
            .toList();
    JudgedLine before = FitJudge.judge(s.line(), s.changes(Optional.empty()));
    JudgedLine after = FitJudge.judge(moved, s.changes(Optional.of(up)));
    assertEquals(before.roleTexts(), after.roleTexts());
    assertEquals(before.fit().isPresent(), after.fit().isPresent());
    if (before.fit().isPresent()) {
      assertEquals(before.fit().get().score(), after.fit().get().score(), 1e-9);
    }
  }

  @Property(tries = 400, seed = "20261125")
  void every_note_gets_a_role_a_sentence_and_a_place_between_0_and_1(
      @ForAll("situations") Situation s) {
    Changes changes = s.changes(Optional.empty());
    JudgedLine judged = FitJudge.judge(s.line(), changes);
    assertEquals(s.line().size(), judged.notes().size());
    for (HeardNote heard : judged.notes()) {
      assertTrue(heard.sits() >= 0 && heard.sits() <= 1, heard.toString());
      assertTrue(Double.isFinite(heard.logOdds()) && heard.weight() >= 0, heard.toString());
      String sentence = heard.sentence(changes.key());
      assertTrue(sentence.endsWith(".") && sentence.length() < 100, sentence);
    }
  }

  @Property(tries = 200, seed = "20261125")
  void an_octave_higher_sits_just_the_same(@ForAll("situations") Situation s) {
    Changes changes = s.changes(Optional.empty());
    List<Note> higher =
        s.line().stream()
            .map(n -> new Note(n.onsetBeats(), n.durationBeats(), n.pitch() + 12))
            .toList();
    assertEquals(FitJudge.judge(s.line(), changes).fit(), FitJudge.judge(higher, changes).fit());
  }

  @Provide
  Arbitrary<Situation> situations() {
    Arbitrary<double[]> steps =
        Combinators.combine(
                Arbitraries.of(0.25, 0.5, 0.5, 1.0, 1.5, 3.0),
                Arbitraries.of(0.0, 0.0, 0.0, 0.5, 1.0, 2.0),
                Arbitraries.integers().between(48, 84))
            .as((length, rest, pitch) -> new double[] {length, rest, pitch});
    return Combinators.combine(
            steps.list().ofMinSize(1).ofMaxSize(24),
            Arbitraries.of(CHORDS).list().ofMinSize(1).ofMaxSize(6),
            Arbitraries.of(-1.0, -0.5, 0.0, 0.5))
        .as(
            (list, chords, start) -> {
              List<Note> line = new ArrayList<>();
              double cursor = start;
              for (double[] step : list) {
                line.add(new Note(cursor, step[0], (int) step[2]));
                cursor += step[0] + step[1];
              }
              return new Situation(line, chords);
            });
  }
}
