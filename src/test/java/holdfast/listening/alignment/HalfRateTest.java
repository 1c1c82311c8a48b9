package holdfast.listening.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sine must stay what it is by its definition, or go. */
class HalfRateTest {

  /** More than two pieces. */
  private static final int COUNT = 20_000;

  private static float sine(double hz, long sample) {
    return (float) Math.sin(2 * Math.PI * hz * sample / Resampler.EAR_RATE);
  }

  private static float[] halved(double hz) {
    float[] sound = new float[4 * COUNT];
    for (int i = 0; i < sound.length; i++) {
      sound[i] = sine(hz, i);
    }
    return HalfRate.read(EarSound.of(sound), 501, COUNT);
  }

  @ParameterizedTest
  @ValueSource(doubles = {55, 440, 2500})
  void a_tone_that_can_be_heard_at_half_the_rate_stays_as_it_is_and_where_it_is(double hz) {
    float[] halved = halved(hz);
    for (int i = 0; i < COUNT; i++) {
      assertEquals(sine(hz, 501 + 2L * i), halved[i], 0.001);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {5600, 7000, 7900})
  void what_would_fold_back_is_gone(double hz) {
    for (float value : halved(hz)) {
      assertTrue(Math.abs(value) < 0.001, () -> value + " is left of 1");
    }
  }
}
