package holdfast.listening.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loops whose delay is the test's own, on a clock that is the test's own. */
class LoopTest {

  /** A loudspeaker in front of a microphone, in gulps, with buffers as devices really give them. */
  private static final class MadeLoop implements LoopDevices {
    private final double delay;
    private final double gulp;
    private final double level;
    private final double runsDryAt;
    private final Random random = new Random(9);
    private final float[] air = new float[48_000 * 40];
    private long nanos = 5_000_000_000L;
    private long written;
    private long gone;
    private long lostFrames;
    private long read;
    private final int buffer;

    MadeLoop(double delay, double gulp, double bufferSeconds, double level, double runsDryAt) {
      this.delay = delay;
      this.gulp = gulp;
      this.level = level;
      this.runsDryAt = runsDryAt;
      this.buffer = (int) (bufferSeconds * 44_100);
    }

    private double seconds() {
      return (nanos - 5_000_000_000L) * 1e-9;
    }

    /** The device takes what is due, a gulp at a time; sound that it has not got is silence. */
    private void move() {
      long due = (long) (Math.floor(seconds() / gulp) * gulp * 44_100) - lostFrames;
      if (runsDryAt > 0 && seconds() > runsDryAt && lostFrames == 0) {
        lostFrames = 2000;
        due -= 2000;
      }
      gone = Math.max(gone, Math.min(written, due));
    }

    @Override
    public int outRate() {
      return 44_100;
    }

    @Override
    public int inRate() {
      return 48_000;
    }

    @Override
    public int room() {
      move();
      return (int) (buffer - (written - gone));
    }

    @Override
    public void play(float[] samples, int count) {
      // A sample leaves the line when the count says so, and is in the air for a while.
      for (int i = 0; i < count; i++) {
        double at = ((double) (written + lostFrames) / 44_100 + delay) * 48_000;
        for (int k = -8; k <= 8; k++) {
          int n = (int) Math.floor(at) + k;
          double x = n - at;
          double s = Math.abs(x) < 1e-9 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
          if (n >= 0 && n < air.length) {
            air[n] += (float) (level * samples[i] * s);
          }
        }
        written++;
      }
    }

    @Override
    public long waitingToPlay() {
      move();
      return written - gone;
    }

    @Override
    public int ready() {
      long there = (long) (Math.floor(seconds() / gulp) * gulp * 48_000);
      return (int) Math.max(0, there - read);
    }

    @Override
    public int read(float[] to, int count) {
      for (int i = 0; i < count; i++) {
        to[i] = air[(int) read++] + (float) (0.003 * random.nextGaussian());
      }
      return count;
    }

    @Override
    public long nanoTime() {
      nanos += 1000;
      return nanos;
    }

    @Override
    public void rest() {
      // A busy machine: a millisecond may be twenty.
      nanos += random.nextInt(10) == 0 ? 20_000_000 : 1_000_000;
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.0123, 0.005, 0.05",
    "0.0371, 0.02, 0.5",
    "0.180, 0.01, 0.25",
    "0.4, 0.01, 0.25",
    "0.001, 0.02, 0.5"
  })
  void the_delay_is_found_within_2_ms(double delay, double gulp, double buffer)
      throws InterruptedException {
    LoopDelay found = Loop.measure(new MadeLoop(delay, gulp, buffer, 0.2, 0)).orElseThrow();
    assertEquals(delay, found.seconds(), 0.002);
    assertTrue(found.spreadSeconds() <= 0.002);
    assertEquals(4, found.heard());
  }

  @Test
  void a_line_that_ran_dry_once_spoils_one_chirp_and_not_the_rest() throws InterruptedException {
    LoopDelay found = Loop.measure(new MadeLoop(0.03, 0.01, 0.25, 0.2, 2.5)).orElseThrow();
    assertEquals(0.03, found.seconds(), 0.002);
  }

  @Test
  void a_loudspeaker_that_is_off_is_told_from_a_delay() throws InterruptedException {
    assertEquals(Optional.empty(), Loop.measure(new MadeLoop(0.03, 0.01, 0.25, 0, 0)));
  }

  @Test
  void a_delay_under_nothing_cannot_be() {
    UserMistake told =
        assertThrows(
            UserMistake.class, () -> Loop.measure(new MadeLoop(-0.05, 0.01, 0.25, 0.2, 0)));
    assertEquals(
        "a delay of -50 ms was measured, which cannot be; calibrate again", told.getMessage());
  }
}
