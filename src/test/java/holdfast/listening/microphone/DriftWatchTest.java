package holdfast.listening.microphone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DriftWatchTest {

  private static final int REACH = 400;
  private static final int LENGTH = 2_000;

  /** Noise without its upper octaves, so that it can be read between its samples. */
  private static double[] noise() {
    Random dice = new Random(20261125);
    double[] noise = new double[LENGTH + 4 * REACH];
    for (int i = 4; i < noise.length; i++) {
      noise[i] = 0.7 * noise[i - 1] + 0.1 * dice.nextGaussian();
    }
    return noise;
  }

  private static float[] piece(double[] from, double start, int length) {
    float[] piece = new float[length];
    for (int i = 0; i < length; i++) {
      int at = (int) Math.floor(start + i);
      double into = start + i - at;
      piece[i] = (float) ((1 - into) * from[at] + into * from[at + 1]);
    }
    return piece;
  }

  @Test
  void a_sound_is_found_where_it_was_put_earlier_or_later_and_between_samples() {
    double[] noise = noise();
    float[] expected = piece(noise, REACH, LENGTH + 2 * REACH);
    for (double late : new double[] {0, 7, -250, 399, 12.5, -0.25}) {
      // Whoever hears late hears what should have been heard before.
      float[] heard = piece(noise, 2 * REACH - late, LENGTH);
      DriftWatch.Alike found = DriftWatch.find(heard, expected).orElseThrow();
      assertEquals(late, found.late(), 0.1);
      assertTrue(found.likeness() > 0.9, "likeness " + found.likeness());
    }
  }

  @Test
  void another_sound_is_not_alike_and_silence_is_nothing() {
    double[] noise = noise();
    float[] expected = piece(noise, REACH, LENGTH + 2 * REACH);
    float[] other = new float[LENGTH];
    Random dice = new Random(7);
    for (int i = 0; i < LENGTH; i++) {
      other[i] = (float) (0.1 * dice.nextGaussian());
    }
    assertTrue(DriftWatch.find(other, expected).orElseThrow().likeness() < 0.5);
    assertEquals(Optional.empty(), DriftWatch.find(new float[LENGTH], expected));
  }
}
