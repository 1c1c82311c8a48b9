package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.IdeaNotation;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * How well single notes sit, by the trade tables' weights: chord tone 1, tension .85, scale tone .5
 * (resolved .85), outside .2 (resolved .7).
 */
class SittingTest {

  private static Changes changes(Object... startingAt) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < startingAt.length; i += 2) {
      chords.put(((Number) startingAt[i]).doubleValue(), Harmony.parse((String) startingAt[i + 1]));
    }
    return Changes.through(chords, Optional.of(Key.parse("C")));
  }

  private static double sits(int note, String line, Changes changes) {
    return FitJudge.judge(IdeaNotation.parse(line), changes).notes().get(note).sits();
  }

  @Test
  void over_one_chord_a_note_sits_by_what_it_is_there() {
    Changes c = changes(0, "Cmaj7");
    assertEquals(1, sits(0, "E4 C5", c), 1e-12);
    assertEquals(0.85, sits(0, "D4 G4", c), 1e-12);
    assertEquals(0.5, sits(1, "C5/0.5 F4/0.5 B4", c), 1e-12, "left by leap");
    assertEquals(0.85, sits(1, "E4/0.5 F4/0.5 G4", c), 1e-12, "in passing");
    assertEquals(0.2, sits(1, "G4/0.5 Eb4/0.5 C5", c), 1e-12, "left by leap");
    assertEquals(0.7, sits(1, "C4 -/0.5 Eb4/0.5 E4", c), 1e-12, "leads by a half step");
    assertEquals(0.85, sits(1, "E4/0.5 F4/0.5 E4", c), 1e-12, "there and back");
    assertEquals(0.5, sits(1, "E4/0.5 F4/0.5 B4", c), 1e-12, "there and off");
  }

  @Test
  void a_note_across_a_change_sits_in_each_chord_by_how_long_it_sounds_there() {
    // E is the third of Cmaj7 for three beats, then outside Abmaj7 for one.
    Changes c = changes(0, "Cmaj7", 4, "Abmaj7");
    double sits = sits(0, "-/1 E4/4", c);
    assertTrue(sits < 0.85 && sits > 0.5, "" + sits);
    assertEquals((3 * 1 + 1 * 0.2) / 4, sits, 1e-9);
    // G belongs to both: the fifth here, the seventh there.
    assertEquals(1, sits(0, "-/1 G4/5", c), 1e-12);
  }

  @Test
  void a_note_that_hangs_over_by_a_hair_is_not_weighed_in_the_next_chord() {
    Changes c = changes(0, "Cmaj7", 4, "Abmaj7");
    assertEquals(1, sits(0, "-/3 E4/1.05", c), 1e-12);
    assertTrue(sits(0, "-/3 E4/1.2", c) < 1);
  }

  @Test
  void a_note_that_comes_early_sits_in_the_chord_that_it_belongs_to() {
    assertEquals(1, sits(1, "-/3 G4/0.5 Eb4/1.5", changes(0, "Cmaj7", 4, "Abmaj7")), 1e-12);
  }

  @Test
  void a_blue_note_is_a_colour_wherever_the_scale_puts_it() {
    Changes blues = Changes.vamp(Harmony.parse("F7"), Optional.of(Key.parse("F")));
    assertEquals(0.85, sits(1, "C4 B3/2 F4", blues), 1e-12);
  }

  @Test
  void a_pause_without_a_chord_takes_nothing_away() {
    assertEquals(1, sits(0, "-/2 E4/4", changes(0, "Cmaj7", 4, "N.C.", 8, "Cmaj7")), 1e-12);
  }
}
