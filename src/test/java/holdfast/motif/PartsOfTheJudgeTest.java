package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The yardstick, the grounds, the octaves: what each part promises by itself. */
class PartsOfTheJudgeTest {

  private static final Line IDEA = Lines.even(60, 64, 67, 62, 65);

  private static Comparison comparison(Line phrase) {
    return new Comparison(
        IDEA,
        Lines.everywhere(Ground.UNKNOWN, IDEA),
        phrase,
        Lines.everywhere(Ground.UNKNOWN, phrase),
        PitchClassSet.EMPTY,
        Player.KEYBOARD,
        1,
        Priors.START,
        new Scales());
  }

  @Test
  void new_material_has_some_length_or_other_and_rather_the_ideas() {
    double sum = 0;
    double before = Double.NEGATIVE_INFINITY;
    for (int m = 1; m <= 35; m++) {
      int[] pitches = new int[m];
      Arrays.fill(pitches, 60);
      Comparison c = comparison(Lines.even(pitches));
      Explanation asNew = Explanations.inOwnRhythm(c).get(0);
      double length =
          asNew.log() - Math.log(Priors.START.share(Treatment.NEW)) - c.background.logTotal();
      sum += Math.exp(length);
      assertEquals(m <= 5, length > before, "length " + m);
      before = length;
      int[] none = new int[m];
      Arrays.fill(none, -1);
      assertArrayEquals(none, asNew.aligner().path());
    }
    assertEquals(1, sum, 1e-9);
  }

  private static List<Note> stretched(List<Note> notes, double by) {
    return notes.stream()
        .map(n -> new Note(n.onsetBeats() * by, n.durationBeats() * by, n.pitch()))
        .toList();
  }

  /** A density of times that are stretched is as much thinner for each time. */
  @Test
  void densities_are_told_in_beats_whatever_the_ideas_pulse() {
    MotifJudge judge = new MotifJudge();
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    List<Note> phrase = Written.typical(4, 62, 65, 68, 67, 65);
    double log = judge.weigh(Motif.of(idea), phrase, Context.NOTES_ONLY).log();
    double slow =
        judge.weigh(Motif.of(stretched(idea, 3)), stretched(phrase, 3), Context.NOTES_ONLY).log();
    assertEquals(4 * Math.log(3), log - slow, 1e-9);
    double statement = judge.logStatement(Motif.of(idea), phrase, Context.NOTES_ONLY);
    assertEquals(
        4 * Math.log(3),
        statement
            - judge.logStatement(
                Motif.of(stretched(idea, 3)), stretched(phrase, 3), Context.NOTES_ONLY),
        1e-9);
  }

  @Test
  void a_phrase_is_at_least_as_likely_as_by_its_best_explanation() {
    MotifJudge judge = new MotifJudge();
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    double again = judge.weigh(Motif.of(idea), idea, Context.NOTES_ONLY).log();
    double literal =
        judge.logStatement(Motif.of(idea), idea, Context.NOTES_ONLY)
            + Math.log(Priors.START.share(Treatment.LITERAL));
    assertTrue(again >= literal && again < literal + 0.2, again + " " + literal);
    double asNew = judge.logNew(Motif.of(idea), idea, Context.NOTES_ONLY);
    assertTrue(asNew < -5, "a restatement is hardly new: " + asNew);
    double other =
        judge.logNew(
            Motif.of(idea),
            Written.line(0, new double[] {0, 1.7, 2, 3.9}, 80, 70, 79, 66),
            Context.NOTES_ONLY);
    assertTrue(other > -0.5 && other <= 0, "what has nothing of the idea is: " + other);
  }

  @Test
  void the_ground_of_an_idea_is_its_chord_else_its_key_else_nothing() {
    Grounds grounds = new Grounds();
    List<Note> notes = Written.typical(0, 62, 65, 69, 67, 65);
    Context inC =
        new Context(
            Optional.empty(), Optional.of(Key.parse("C")), Player.KEYBOARD, 4, Priors.START);
    Ground chord = grounds.under(Motif.over(Harmony.parse("Dm7"), notes), inC)[4];
    assertEquals(PitchClassSet.of(2, 5, 9, 0), chord.chord());
    assertEquals(Lines.C_MAJOR, chord.scale());
    assertTrue(chord.welcomes(64), "the ninth");
    assertEquals(
        chord, grounds.under(Motif.over(Harmony.parse("Dm7"), notes), inC)[0], "asked again");
    Ground key = grounds.under(Motif.of(notes), inC)[0];
    assertEquals(Lines.C_MAJOR, key.scale());
    assertFalse(key.knowsChord());
    assertEquals(Ground.UNKNOWN, grounds.under(Motif.of(notes), Context.NOTES_ONLY)[0]);
    assertEquals(key, grounds.under(Motif.over(Harmony.parse("N.C."), notes), inC)[0]);
  }

  @Test
  void under_a_phrase_each_note_has_the_chord_of_its_time() {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("Dm7"));
    chords.put(1.0, Harmony.parse("Fm7"));
    chords.put(2.2, Harmony.parse("N.C."));
    Context context =
        Context.over(Changes.through(chords, Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
    Ground[] under = new Grounds().under(Written.typical(0, 62, 65, 69, 67, 65), context);
    assertEquals(PitchClassSet.of(2, 5, 9, 0), under[1].chord());
    assertEquals(PitchClassSet.of(5, 8, 0, 3), under[2].chord());
    assertEquals(PitchClassSet.of(5, 8, 0, 3), under[3].chord());
    assertEquals(PitchClassSet.EMPTY, under[4].chord());
    assertEquals(Lines.C_MAJOR, under[4].scale());
  }

  @Test
  void steps_are_counted_along_seven_notes_where_such_a_scale_is_taught() {
    Context none = Context.NOTES_ONLY;
    for (String chord : List.of("Edim7", "C7alt", "Cmaj7", "G7b9")) {
      Ground ground =
          new Grounds().under(Motif.over(Harmony.parse(chord), Written.typical(0, 62)), none)[0];
      assertEquals(7, ground.scale().size(), chord);
    }
  }

  @Test
  void notes_may_lie_an_octave_away_one_in_eight_to_either_side() {
    Line idea = Lines.even(60, 64, 67);
    Line phrase = Lines.even(60, 76, 55);
    PitchMaps maps =
        new PitchMaps(
            phrase,
            Lines.everywhere(Ground.UNKNOWN, phrase),
            new Intonation(Player.KEYBOARD, 1, false),
            new Scales());
    PitchMap literal = maps.literal(idea);
    PitchMap octaves = Endings.anyOctave(literal, phrase);
    assertEquals(0.75 * Math.exp(literal.notes()[0]), Math.exp(octaves.notes()[0]), 1e-12);
    assertEquals(0.125, Math.exp(octaves.notes()[1 * 3 + 1]), 1e-12);
    assertEquals(0.125, Math.exp(octaves.notes()[2 * 3 + 2]), 1e-12);
    assertEquals(76, octaves.expected()[1 * 3 + 1]);
    assertEquals(55, octaves.expected()[2 * 3 + 2]);
    assertEquals(60, octaves.expected()[0]);
    assertTrue(Endings.someInAnotherOctave(octaves, phrase, new int[] {0, 1, 2}));
    assertFalse(Endings.someInAnotherOctave(octaves, phrase, new int[] {-1, 1, 2}), "all");
    assertFalse(Endings.someInAnotherOctave(octaves, phrase, new int[] {0, -1, -1}), "none");
    assertTrue(Endings.someInAnotherOctave(octaves, phrase, new int[] {0, -1, 2}));
  }

  @Test
  void a_share_of_evidence_lies_between_nought_and_one() {
    assertEquals(
        "contour evidence must be 0 to 1, not 1.5",
        assertThrows(IllegalArgumentException.class, () -> new Evidence(0, 1.5, 0)).getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Evidence(-0.1, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new Evidence(0, 0, Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Context(Optional.empty(), Optional.empty(), Player.VOICE, 0, Priors.START));
    assertThrows(IllegalArgumentException.class, () -> Motif.of(Written.typical(0, 62)).heard(-1));
  }

  @Test
  void an_idea_that_was_heard_once_doubles_the_spread_and_often_hardly_widens_it() {
    Motif idea = Motif.of(Written.typical(0, 62));
    assertEquals(1, idea.spreading());
    assertEquals(2, idea.heard(1).spreading());
    assertEquals(1.25, idea.heard(4).spreading());
  }
}
