package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.sound.Capture;
import holdfast.backing.sound.SoundBank;
import holdfast.chart.ChartLibrary;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The measuring itself is measured: errors that we put in must come out. */
class OnsetErrorsTest {

  private static final double RATE = 44_100;

  private static final Performance EIGHT_BARS =
      new Performance(
          Arrangement.of(
              ChartLibrary.open("paper-boats"),
              Feel.BALLAD,
              120,
              Optional.empty(),
              Optional.empty()),
          OptionalInt.of(1),
          1,
          EnumSet.noneOf(Part.class));

  private static final float[] RENDERED =
      Capture.mono(BackingAudio.render(EIGHT_BARS, SoundBank.builtIn()));

  private static final double[] ONSETS =
      EIGHT_BARS.events().stream()
          .mapToDouble(event -> EIGHT_BARS.tempoMap().secondsAt(event.onsetBeats()) + 2)
          .distinct()
          .toArray();

  /**
   * At half the volume, a second late, in the noise of 16 bits, and shifted by the given frames.
   */
  private static float[] captured(int fromFrame, int shift) {
    Random random = new Random(5);
    float[] played = new float[RENDERED.length + 2 * (int) RATE];
    for (int i = 0; i < RENDERED.length; i++) {
      int at = i + (int) RATE + (i >= fromFrame ? shift : 0);
      played[at] = RENDERED[i] / 2 + (random.nextFloat() - 0.5f) / 32768;
    }
    return played;
  }

  @Test
  void a_late_but_steady_capture_has_no_error() {
    OnsetErrors errors = OnsetErrors.find(captured(0, 0), RENDERED, ONSETS).orElseThrow();
    assertEquals(36, errors.millis().size());
    assertEquals(0, errors.maxMillis(), 0.01);
    assertTrue(errors.worstLikeness() > 0.99);
  }

  @Test
  void a_hole_of_3_ms_in_the_middle_is_found_to_a_hundredth_of_a_millisecond() {
    int hole = (int) Math.round(0.003 * RATE);
    int middle = (int) (ONSETS[18] * RATE) - 2000;
    OnsetErrors errors = OnsetErrors.find(captured(middle, hole), RENDERED, ONSETS).orElseThrow();
    assertEquals(0, errors.millis().get(17), 0.01);
    assertEquals(hole * 1000 / RATE, errors.millis().get(18), 0.01);
    assertEquals(hole * 1000 / RATE, errors.millis().get(35), 0.01);
  }

  @Test
  void silence_holds_no_onsets() {
    assertEquals(Optional.empty(), OnsetErrors.find(new float[100_000], RENDERED, ONSETS));
  }
}
