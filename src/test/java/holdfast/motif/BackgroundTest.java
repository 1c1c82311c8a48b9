package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** New material as probabilities: all that may come next adds up to one. */
class BackgroundTest {

  private static final Line IDEA = Lines.even(64, 67, 65, 60);
  private static final RhythmModel KEYS = new RhythmModel(Player.KEYBOARD, 1);

  private static Background over(Ground ground, Line phrase) {
    return new Background(IDEA, phrase, Lines.everywhere(ground, phrase), KEYS, new Scales());
  }

  /** Of the whole line, times aside. */
  private static double share(Ground ground, int... pitches) {
    Background background = over(ground, Lines.even(pitches));
    double times = 0;
    for (double time : background.time) {
      times += time;
    }
    return Math.exp(background.logTotal() - times);
  }

  @Test
  void every_interval_has_its_share() {
    double sum = 0;
    for (int step = -60; step <= 60; step++) {
      sum += Background.stepShare(step);
      assertEquals(Background.stepShare(step), Background.stepShare(-step));
    }
    assertEquals(1, sum, 0.01);
    assertTrue(Background.stepShare(12) > Background.stepShare(13));
    assertEquals(Background.stepShare(14) / 2, Background.stepShare(15), 1e-12);
    assertEquals(
        1,
        Background.directionShare(5) + Background.directionShare(0) + Background.directionShare(-2),
        1e-12);
  }

  @Test
  void some_note_comes_first_and_nearer_to_the_idea_is_likelier() {
    for (Ground ground : new Ground[] {Ground.UNKNOWN, Lines.C}) {
      double sum = 0;
      for (int pitch = 64 - 24; pitch <= 64 + 24; pitch++) {
        sum += Math.exp(over(ground, Lines.even(pitch)).pitch[0]);
      }
      assertEquals(1, sum, 1e-9);
    }
    assertTrue(share(Lines.C, 64) > share(Lines.C, 76));
    assertTrue(share(Lines.C, 64) > share(Lines.C, 63), "in the scale");
    assertEquals(share(Lines.C, 64 + 36), share(Lines.C, 64 - 36), 1e-12);
  }

  @Test
  void some_note_comes_next_and_one_of_the_scale_is_likelier() {
    for (Ground ground : new Ground[] {Ground.UNKNOWN, Lines.C}) {
      double sum = 0;
      for (int step = -12; step <= 12; step++) {
        sum += Math.exp(over(ground, Lines.even(64, 64 + step)).pitch[1]);
      }
      assertEquals(1, sum, 0.01);
    }
    Background stays = over(Lines.C, Lines.even(60, 62));
    Background leaves = over(Lines.C, Lines.even(60, 61));
    assertTrue(stays.taste[1] > leaves.taste[1]);
    assertEquals(4, Math.exp(stays.taste[1] - leaves.taste[1]), 1e-9, "four times as likely");
  }

  @ParameterizedTest
  @CsvSource({"60, 62", "60, 64", "60, 60", "64, 65", "67, 71", "62, 57"})
  void whatever_kind_of_line_it_is_it_goes_on_to_some_note(int one, int two) {
    double sum = 0;
    for (int step = -12; step <= 12; step++) {
      sum += share(Lines.C, one, two, two + step);
    }
    assertEquals(share(Lines.C, one, two), sum, 0.01 * sum);
  }

  @Test
  void without_a_scale_no_kind_of_line_is_likelier_than_certain() {
    double sum = 0;
    for (int step = -12; step <= 12; step++) {
      sum += share(Ground.UNKNOWN, 60, 62, 62 + step) / share(Ground.UNKNOWN, 60, 62);
    }
    assertTrue(sum > 0.9 && sum <= 1.001, "" + sum);
  }

  private static Material kind(Ground ground, int... pitches) {
    return over(ground, Lines.even(pitches)).kind();
  }

  @Test
  void each_kind_of_line_is_known_by_its_steps_with_a_chord_or_without() {
    for (Ground ground : new Ground[] {Ground.UNKNOWN, Lines.C}) {
      assertEquals(Material.SCALE_RUN, kind(ground, 60, 62, 64, 65, 67, 69, 71, 72));
      assertEquals(Material.ARPEGGIO, kind(ground, 60, 64, 67, 71, 67, 64, 60));
      assertEquals(Material.ARPEGGIO, kind(ground, 71, 67, 64, 60, 55, 52, 48));
      assertEquals(Material.REPEATED_NOTE, kind(ground, 67, 67, 67, 67, 67));
      assertEquals(Material.CHROMATIC_LINE, kind(ground, 67, 66, 65, 64, 63, 62, 61));
      assertEquals(Material.MELODY, kind(ground, 67, 64, 69, 62, 71, 70, 60));
    }
  }

  @Test
  void a_skipped_note_of_the_scale_or_of_the_chord_is_no_run() {
    assertEquals(Material.MELODY, kind(Lines.C, 60, 67, 64, 72, 67, 76), "every second chord note");
    assertEquals(Material.MELODY, kind(Lines.C, 60, 65, 62, 67, 64, 69), "fourths and thirds");
  }

  @Test
  void a_run_gains_by_every_note_that_goes_on_and_loses_by_one_that_does_not() {
    Background run = over(Lines.C, Lines.even(60, 62, 64, 65, 74));
    for (int j = 1; j <= 3; j++) {
      assertTrue(run.gain(Material.SCALE_RUN, j) > 0, "note " + j);
    }
    // What is left to a note that leaves the run is the share of those that leave: .15.
    assertEquals(Math.log(0.15), run.gain(Material.SCALE_RUN, 4), 1e-9);
    assertEquals(0, run.gain(Material.MELODY, 2), 1e-9, "against itself");
    assertEquals(0, Background.rarer(Material.MELODY), 1e-12);
    assertTrue(Background.rarer(Material.SCALE_RUN) < 0);
  }

  @Test
  void a_run_turns_seldom() {
    assertTrue(share(Lines.C, 60, 62, 64) > share(Lines.C, 64, 62, 64));
  }
}
