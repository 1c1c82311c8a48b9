package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.PitchClassSet;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where the notes of an idea are carried to. Sequences as theory books define them. */
class PitchMapsTest {

  private static final Line IDEA = Lines.even(67, 69, 72, 69, 64);

  private static PitchMaps maps(Ground ground, Line phrase) {
    return new PitchMaps(
        phrase,
        Lines.everywhere(ground, phrase),
        new Intonation(Player.KEYBOARD, 1, false),
        new Scales());
  }

  private static int[] expected(PitchMap map, Line idea, int m) {
    int[] line = new int[idea.size];
    for (int i = 0; i < line.length; i++) {
      line[i] = map.expected()[i * m + Math.min(i, m - 1)];
    }
    return line;
  }

  private static Optional<int[]> sequence(
      Ground ideaGround, Ground ground, PitchClassSet key, Line idea, Line phrase) {
    return maps(ground, phrase).sequences(idea, Lines.everywhere(ideaGround, idea), key).stream()
        .map(map -> expected(map, idea, phrase.size))
        .filter(line -> Arrays.equals(line, phrase.pitch))
        .findFirst();
  }

  @Test
  void all_transpositions_together_are_certain_and_nearer_ones_likelier() {
    double sum = 0;
    for (int by = -36; by <= 36; by++) {
      if (by != 0) {
        sum += Math.exp(PitchMaps.logTransposition(by));
        assertEquals(PitchMaps.logTransposition(by), PitchMaps.logTransposition(-by));
      }
    }
    assertEquals(1, sum, 1e-9);
    assertTrue(PitchMaps.logTransposition(2) > PitchMaps.logTransposition(5));
    assertTrue(PitchMaps.logTransposition(12) > PitchMaps.logTransposition(11), "an octave");
    assertTrue(PitchMaps.logTransposition(13) < PitchMaps.logTransposition(11));
  }

  @Test
  void a_phrase_proposes_the_transposition_that_it_is() {
    Line phrase = Lines.even(69, 71, 74, 71, 66);
    List<PitchMap> moved = maps(Ground.UNKNOWN, phrase).transposed(IDEA, 2);
    assertEquals(2, moved.get(0).semitones());
    assertTrue(moved.size() <= 2 && moved.stream().noneMatch(map -> map.semitones() == 0));
    assertEquals(List.of(69, 71, 74, 71, 66), ints(expected(moved.get(0), IDEA, 5)));
    assertEquals(0, maps(Ground.UNKNOWN, phrase).literal(IDEA).semitones());
  }

  private static List<Integer> ints(int[] numbers) {
    return Arrays.stream(numbers).boxed().toList();
  }

  @Test
  void along_the_key_a_step_up_makes_g_a_c_a_e_into_a_b_d_b_f() {
    Line phrase = Lines.even(69, 71, 74, 71, 65);
    assertTrue(
        sequence(Ground.UNKNOWN, Ground.UNKNOWN, Lines.C_MAJOR, IDEA, phrase).isPresent(), "key");
    assertTrue(
        sequence(Ground.UNKNOWN, Ground.UNKNOWN, PitchClassSet.EMPTY, IDEA, phrase).isPresent(),
        "no key told: a major scale that holds the idea");
    assertTrue(sequence(Lines.C, Lines.C, PitchClassSet.EMPTY, IDEA, phrase).isPresent(), "chord");
  }

  @Test
  void from_c_major_to_c_minor_in_place_the_third_sixth_and_seventh_fall() {
    PitchClassSet minor = PitchClassSet.of(0, 2, 3, 5, 7, 8, 10);
    Ground cMinor = new Ground(PitchClassSet.of(0, 3, 7), minor, PitchClassSet.of(0, 2, 3, 7));
    Line phrase = Lines.even(67, 68, 72, 68, 63);
    assertTrue(sequence(Lines.C, cMinor, PitchClassSet.EMPTY, IDEA, phrase).isPresent());
    assertTrue(sequence(Lines.C, cMinor, Lines.C_MAJOR, IDEA, phrase).isPresent());
  }

  @Test
  void a_chromatic_note_keeps_its_distance_above_its_step() {
    // C sharp lies a semitone above C, the E flat above D.
    assertTrue(
        sequence(
                Ground.UNKNOWN,
                Ground.UNKNOWN,
                Lines.C_MAJOR,
                Lines.even(64, 61, 62, 65),
                Lines.even(65, 63, 64, 67))
            .isPresent());
  }

  @Test
  void a_sequence_that_comes_to_a_plain_transposition_is_left_out() {
    // C D E up a fourth is F G A by steps and by semitones alike.
    Line idea = Lines.even(60, 62, 64);
    Line phrase = Lines.even(65, 67, 69);
    assertTrue(sequence(Ground.UNKNOWN, Ground.UNKNOWN, Lines.C_MAJOR, idea, phrase).isEmpty());
  }

  @Test
  void the_steps_of_a_sequence_are_counted_and_farther_ones_are_rarer() {
    PitchMap step = sequenceBy(1, 69, 71, 74, 71, 65);
    PitchMap third = sequenceBy(2, 71, 72, 76, 72, 67);
    PitchMap sixth = sequenceBy(5, 76, 77, 81, 77, 72);
    PitchMap down = sequenceBy(-1, 65, 67, 71, 67, 62);
    assertEquals(2, step.semitones());
    assertEquals(4, third.semitones());
    assertEquals(-2, down.semitones());
    assertTrue(step.logPrior() < 0 && step.logPrior() > third.logPrior());
    assertTrue(third.logPrior() > sixth.logPrior());
    assertEquals(step.logPrior(), down.logPrior(), 1e-12);
  }

  private static PitchMap sequenceBy(int steps, int... moved) {
    return maps(Ground.UNKNOWN, Lines.even(moved))
        .sequences(IDEA, Lines.everywhere(Ground.UNKNOWN, IDEA), Lines.C_MAJOR)
        .stream()
        .filter(map -> map.steps() == steps)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_note_that_somebody_may_choose_to_move_stays_or_goes_to_some_place() {
    Line idea = Lines.even(67, 60);
    double sum = 0;
    for (int pitch = 67 - 24; pitch <= 67 + 24; pitch++) {
      PitchMaps maps = maps(Ground.UNKNOWN, Lines.even(pitch, 60));
      sum += Math.exp(maps.someMoved(maps.literal(idea), idea).notes()[0]);
    }
    // Slips come on top of moves by choice.
    assertEquals(1, sum, 0.03);
  }

  @Test
  void in_its_place_a_note_that_clashes_is_expected_beside_itself() {
    Line idea = Lines.even(65, 64);
    Line phrase = Lines.even(64, 64);
    PitchMap map = maps(Lines.C, phrase).skewed(idea, 0);
    assertEquals(List.of(65, 65, 64, 64), ints(map.expected()));
    // F over Cmaj7 gives way to E; E that was meant for E stays.
    assertTrue(map.notes()[0] > Math.log(0.4));
    assertTrue(map.notes()[3] > map.notes()[0]);
    PitchMap stays = maps(Lines.C, Lines.even(65, 64)).skewed(idea, 0);
    assertTrue(stays.notes()[0] < map.notes()[0], "F stays less often than it gives way");
    assertTrue(
        map.logPrior() > maps(Lines.C, phrase).skewed(idea, 2).logPrior(), "moved as well: rarer");
  }

  @Test
  void all_moves_along_the_scale_together_are_certain_as_a_two_sided_geometric_series() {
    double q = Math.exp(-1 / 3.0); // an e-fold in three steps
    assertEquals(
        q * (1 - q) / (1 + q), Math.exp(sequenceBy(1, 69, 71, 74, 71, 65).logPrior()), 1e-9);
    assertEquals(
        q * q * (1 - q) / (1 + q), Math.exp(sequenceBy(2, 71, 72, 76, 72, 67).logPrior()), 1e-9);
  }

  @Test
  void wherever_it_was_meant_a_note_that_makes_way_lies_somewhere() {
    for (int meant : new int[] {65, 64, 61}) {
      double sum = 0;
      for (int pitch = meant - 12; pitch <= meant + 12; pitch++) {
        PitchMaps maps = maps(Lines.C, Lines.even(pitch, 60));
        sum += Math.exp(maps.skewed(Lines.even(meant, 60), 0).notes()[0]);
      }
      // A note that stays may slip, and what slips comes on top.
      assertEquals(1, sum, 0.03, "meant " + meant);
    }
    PitchMap moved = maps(Lines.C, Lines.even(69, 64)).skewed(Lines.even(64, 60), 5);
    assertEquals(69, moved.expected()[0]);
    assertEquals(65, moved.expected()[1 * 2 + 1]);
    assertEquals(5, moved.semitones());
  }

  @Test
  void a_voice_that_lay_high_twice_lay_where_it_was_meant() {
    double same = inPlace(30, 30);
    assertTrue(same > inPlace(30, -30) && same > inPlace(30, 0));
    assertEquals(same, inPlace(0, 0), 1e-9);
  }

  private static double inPlace(double ideaCents, double cents) {
    Line idea = Line.of(List.of(new holdfast.melody.Note(0, 1, 64, ideaCents)), 1);
    Line phrase = Line.of(List.of(new holdfast.melody.Note(0, 1, 64, cents)), 1);
    PitchMaps maps =
        new PitchMaps(
            phrase,
            Lines.everywhere(Lines.C, phrase),
            new Intonation(Player.VOICE, 1, true),
            new Scales());
    return maps.skewed(idea, 0).notes()[0] + maps.literal(idea).notes()[0];
  }
}
