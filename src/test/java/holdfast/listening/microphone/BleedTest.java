package holdfast.listening.microphone;

import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.audio.Resampler;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A backing that is known to the sample but heard later than anyone thought, and softer, is taken
 * out of what a microphone hears; and again after the sound device has jumped.
 */
class BleedTest {

  private static final int SOUND_RATE = 44_100;
  private static final int RATE = Resampler.EAR_RATE;
  private static final int BLOCK = 80;
  private static final double LATE_SECONDS = 0.037;

  private final Strokes strokes = new Strokes();
  private final Bleed bleed = new Bleed(strokes, BLOCK);
  private double level = 0.3;

  /** The backing: bursts of noise, each with a colour of its own, like strokes and chords. */
  private static final class Strokes implements KnownSound {
    private final float[] samples = new float[40 * SOUND_RATE];
    private long jump;

    Strokes() {
      Random random = new Random(20_261_125);
      double state = 0;
      double colour = 0;
      for (int i = 0; i < samples.length; i++) {
        if (i % (SOUND_RATE / 4) == 0) {
          colour = 0.5 + 0.4 * random.nextDouble();
        }
        state = colour * state + (1 - colour) * random.nextGaussian();
        double fade = Math.exp(-8.0 * (i % (SOUND_RATE / 4)) / SOUND_RATE);
        samples[i] = (float) (0.2 * fade * state);
      }
    }

    @Override
    public int rate() {
      return SOUND_RATE;
    }

    @Override
    public long sampleHeard(long nanoTime) {
      return Math.round(nanoTime * 1e-9 * SOUND_RATE) + jump;
    }

    @Override
    public void copy(long from, float[] to, int length) {
      Arrays.fill(to, 0, length, 0);
      for (int i = 0; i < length; i++) {
        if (from + i >= 0 && from + i < samples.length) {
          to[i] = samples[(int) (from + i)];
        }
      }
    }
  }

  @Test
  void a_backing_that_is_heard_late_and_soft_is_taken_out() {
    assertTrue(left(0, 8) < -20, "after eight seconds");
  }

  @Test
  void it_is_taken_out_again_after_the_sound_device_has_jumped() {
    left(0, 8);
    // The device ran dry for 60 ms: from now on every sample is heard so much later.
    strokes.jump = -Math.round(0.06 * SOUND_RATE);
    assertTrue(left(8, 14) < -20, "after a jump");
  }

  @Test
  void it_is_taken_out_again_after_somebody_has_turned_it_down() {
    left(0, 8);
    level = 0.12;
    assertTrue(left(8, 14) < -20, "turned down");
  }

  /** Lets seconds go by and tells how much of the backing is left in the last two, in decibels. */
  private double left(int from, int to) {
    double before = 0;
    double after = 0;
    float[] block = new float[BLOCK];
    for (long at = (long) from * RATE; at < (long) to * RATE; at += BLOCK) {
      for (int i = 0; i < BLOCK; i++) {
        double heard = (double) (at + i) / RATE - LATE_SECONDS;
        block[i] = (float) (level * between(strokes, heard * SOUND_RATE + strokes.jump));
      }
      boolean counts = at >= (to - 2L) * RATE;
      before += counts ? energy(block) : 0;
      bleed.clean(block, BLOCK, Math.round(at * 1e9 / RATE));
      after += counts ? energy(block) : 0;
    }
    return 10 * Math.log10(after / before);
  }

  /** The sound at a place between samples, without what the ear's rate cannot hold. */
  private static double between(Strokes strokes, double place) {
    double sum = 0;
    double cutoff = 0.9 * RATE / SOUND_RATE;
    int middle = (int) Math.floor(place);
    for (int i = middle - 40; i <= middle + 40; i++) {
      double x = place - i;
      double window = 0.5 + 0.5 * Math.cos(Math.PI * x / 41);
      double y = Math.PI * cutoff * x;
      double sinc = Math.abs(y) < 1e-9 ? 1 : Math.sin(y) / y;
      float value = i >= 0 && i < strokes.samples.length ? strokes.samples[i] : 0;
      sum += cutoff * sinc * window * value;
    }
    return sum;
  }

  private static double energy(float[] block) {
    double sum = 0;
    for (float value : block) {
      sum += value * value;
    }
    return sum;
  }
}
