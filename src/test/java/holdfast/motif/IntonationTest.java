package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A note where another was meant. */
class IntonationTest {

  @ParameterizedTest
  @EnumSource(Player.class)
  void some_key_is_struck_or_sung(Player player) {
    for (double spreading : new double[] {1, 2}) {
      Intonation keys = new Intonation(player, spreading, false);
      double sum = 0;
      for (int off = -12; off <= 12; off++) {
        sum += Math.exp(keys.log(off, 0));
      }
      assertEquals(1, sum, 0.003);
      assertEquals(1 - Math.exp(keys.log(0, 0)), 2 * Math.exp(keys.log(1, 0)), 0.05);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Player.class,
      names = {"VOICE", "UNKNOWN"})
  void some_pitch_is_sung(Player player) {
    for (double spreading : new double[] {1, 2}) {
      Intonation voice = new Intonation(player, spreading, true);
      double sum = 0;
      for (int off = -12; off <= 12; off++) {
        for (int beside = -50; beside < 50; beside++) {
          sum += Math.exp(voice.log(off, beside + 0.5)) / 100;
        }
      }
      assertEquals(1, sum, 0.003);
    }
  }

  /** Normal density at the mean and a standard deviation from it; handbook tables, from memory. */
  @Test
  void a_voice_lies_about_its_note_with_a_spread_of_30_cents() {
    Intonation voice = new Intonation(Player.VOICE, 1, true);
    double right = Math.exp(voice.log(0, 0));
    // All but the two in a hundred that are wrong notes.
    assertEquals(0.39894 * 100 / 30, right, 0.03);
    assertEquals(0.60653, Math.exp(voice.log(0, 30)) / right, 0.005);
    assertEquals(0.60653, Math.exp(voice.log(0, -30)) / right, 0.005);
    assertEquals(0.60653, Math.exp(voice.log(1, -70)) / right, 0.005);
  }

  @Test
  void heard_against_an_idea_that_was_sung_once_the_variances_add() {
    Intonation voice = new Intonation(Player.VOICE, 2, true);
    double right = Math.exp(voice.log(0, 0));
    assertEquals(0.60653, Math.exp(voice.log(0, 30 * Math.sqrt(2))) / right, 0.005);
  }

  @Test
  void a_wrong_note_is_the_next_key_before_one_farther_off() {
    for (Player player : Player.values()) {
      for (boolean tuned : new boolean[] {false, true}) {
        Intonation in = new Intonation(player, 1, tuned);
        assertTrue(in.log(0, 0) > in.log(1, 0));
        assertTrue(in.log(1, 0) >= in.log(2, 0));
        assertTrue(in.log(2, 0) > in.log(3, 0));
        assertEquals(in.log(3, 0), in.log(300, 0), 1e-9);
        assertEquals(in.log(-2, 0), in.log(2, 0), 1e-12);
      }
    }
  }

  @Test
  void a_distance_is_called_by_the_nearest_semitone_that_was_sung() {
    assertEquals(1, Intonation.semitones(1, 40));
    assertEquals(2, Intonation.semitones(1, 60));
    assertEquals(0, Intonation.semitones(1, -60));
    assertEquals(-2, Intonation.semitones(-2, 0));
  }
}
