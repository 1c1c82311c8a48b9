package holdfast.listening.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Made-up tappers, whose habit and spread are those of the reviews (Repp 2005; Repp and Su 2013;
 * from memory): 20 to 50 ms early, standard deviation 15 to 40 ms.
 */
class TapCheckTest {

  private static List<Double> clicks() {
    List<Double> clicks = new ArrayList<>();
    for (int i = 0; i < ClickTrain.CLICKS; i++) {
      clicks.add(100 + ClickTrain.APART * i);
    }
    return clicks;
  }

  private static List<Double> taps(double latency, double early, double spread, long seed) {
    Random random = new Random(seed);
    List<Double> taps = new ArrayList<>();
    for (double click : clicks()) {
      taps.add(click + latency - early + spread * random.nextGaussian());
    }
    return taps;
  }

  @ParameterizedTest
  @CsvSource({"0.010, 0.020", "0.040, 0.050", "0.180, 0.030", "0.300, 0.035", "0.000, 0.045"})
  void the_latency_is_found_whoever_taps_within_what_is_said(double latency, double early) {
    TapCheck check = TapCheck.of(clicks(), taps(latency, early, 0.020, 3));
    assertEquals(latency, check.latencySeconds(), 2 * check.unsureSeconds());
    assertTrue(check.unsureSeconds() >= 0.015 && check.unsureSeconds() < 0.025);
  }

  @Test
  void stumbles_and_missed_clicks_do_not_matter() {
    List<Double> taps = taps(0.060, 0.035, 0.015, 4);
    taps.set(8, taps.get(8) + 0.25);
    taps.set(11, taps.get(11) - 0.15);
    taps.remove(15);
    taps.add(9, taps.get(9) + 0.02);
    assertEquals(0.060, TapCheck.of(clicks(), taps).latencySeconds(), 0.012);
  }

  @Test
  void taps_that_go_with_nothing_are_told_so() {
    Random random = new Random(5);
    List<Double> taps = new ArrayList<>();
    for (double click : clicks()) {
      taps.add(click + 0.4 * random.nextDouble() - 0.2);
    }
    assertEquals(
        "the taps lay too far apart to tell anything; tap calmly with each click and try again",
        assertThrows(UserMistake.class, () -> TapCheck.of(clicks(), taps)).getMessage());
    List<Double> few = taps(0.05, 0.03, 0.02, 6).subList(0, 9);
    assertEquals(
        "only 5 taps went with the clicks, and 8 are needed; tap once with each click, from the"
            + " first to the last",
        assertThrows(UserMistake.class, () -> TapCheck.of(clicks(), few)).getMessage());
  }

  @Test
  void claps_are_found_where_they_begin_and_clicks_from_headphones_are_not_claps() {
    int rate = 48_000;
    float[] sound = new float[5 * rate];
    Random random = new Random(7);
    for (int i = 0; i < sound.length; i++) {
      sound[i] = (float) (0.002 * random.nextGaussian());
    }
    long[] claps = {12_345, 60_000, 120_777, 200_001};
    for (long clap : claps) {
      for (int i = 0; i < 4000; i++) {
        sound[(int) clap + i] += (float) (0.6 * Math.exp(-i / 400.0) * random.nextGaussian());
        // The click that was heard 30 ms later, softly.
        sound[(int) clap + 1440 + i] += (float) (0.05 * Math.exp(-i / 300.0) * Math.sin(0.2 * i));
      }
    }
    List<Long> found = Claps.in(sound, sound.length, rate);
    assertEquals(claps.length, found.size());
    for (int i = 0; i < claps.length; i++) {
      assertEquals((double) claps[i], (double) found.get(i), 0.002 * rate);
    }
  }
}
