package holdfast.listening.pitch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Arithmetic worked by hand: 12-tone equal temperament, 1200 cents an octave. */
class TuningTest {

  @Test
  void a_line_sung_40_cents_flat_throughout_keeps_its_pitches() {
    Tuning tuning =
        Tuning.fitting(
            List.of(new double[] {5960, 0.5}, new double[] {6160, 0.5}, new double[] {6365, 0.5}));
    assertEquals(-38.3, tuning.cents(), 1.0);
    assertEquals(60, tuning.pitch(5945));
    assertEquals(60, tuning.pitch(5975));
  }

  @Test
  void a_slow_drift_is_followed_over_half_a_semitone() {
    Tuning tuning = Tuning.unknown();
    for (int i = 0; i < 60; i++) {
      double flat = -i;
      tuning.hear(6000 + flat, 0.5);
      assertEquals(60, tuning.pitch(6000 + flat));
    }
    assertTrue(tuning.drift() < -45 && tuning.drift() > -62, "drift " + tuning.drift());
  }

  @Test
  void notes_in_tune_stay_at_440() {
    Tuning tuning = Tuning.unknown();
    for (int pitch : new int[] {60, 62, 64, 65, 67}) {
      tuning.hear(100 * pitch, 0.4);
    }
    assertEquals(440, tuning.a4Hz(), 0.01);
  }
}
