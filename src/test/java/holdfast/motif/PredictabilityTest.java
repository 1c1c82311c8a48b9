package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class PredictabilityTest {

  private static Context bars(String... symbols) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < symbols.length; i++) {
      chords.put(4.0 * i, Harmony.parse(symbols[i]));
    }
    return Context.over(Changes.through(chords, Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
  }

  @Test
  void the_same_notes_again_are_what_was_expected() {
    Motif idea = Motif.over(Harmony.parse("Dm7"), Written.typical(0, 62, 65, 69, 67, 65));
    Expectation heard =
        new Predictability(idea).hear(Written.typical(4, 62, 65, 69, 67, 65), bars("Dm7", "G7"));
    assertEquals(CarryWay.SAME_NOTES, heard.way());
    assertTrue(heard.nearness() > 0.95, heard::toString);
  }

  @Test
  void a_sequence_that_goes_on_becomes_what_is_counted_on() {
    Motif idea = Motif.over(Harmony.parse("C"), Written.typical(0, 72, 71, 69, 67, 69));
    Predictability listener = new Predictability(idea);
    Context over = bars("C", "Em7", "Am7", "Dm7");
    Expectation first = listener.hear(Written.typical(4, 71, 69, 67, 65, 67), over);
    Expectation second = listener.hear(Written.typical(8, 69, 67, 65, 64, 65), over);
    Expectation third = listener.hear(Written.typical(12, 67, 65, 64, 62, 64), over);
    assertEquals(CarryWay.BY_STEP, third.way());
    assertTrue(third.share() > first.share());
    assertTrue(third.nearness() >= second.nearness());
    assertEquals(Written.typical(12, 67, 65, 64, 62, 64), third.expected());
  }

  @Test
  void the_thread_breaks_at_the_first_phrase_that_nobody_could_foresee() {
    Motif idea = Motif.over(Harmony.parse("Dm7"), Written.typical(0, 62, 65, 69, 67, 65));
    Predictability listener = new Predictability(idea);
    Context over = bars("Dm7", "G7", "C", "Am7");
    assertFalse(listener.hear(Written.typical(4, 62, 65, 69, 67, 65), over).brokeThread());
    double[] other = {0, 1.5, 1.75, 3};
    assertTrue(listener.hear(Written.line(8, other, 79, 72, 76, 84), over).brokeThread());
    assertFalse(listener.hear(Written.line(12, other, 77, 71, 72, 83), over).brokeThread());
  }
}
