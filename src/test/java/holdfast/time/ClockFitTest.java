package holdfast.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A device is simulated whose true rate we know, and observed as badly as real ones are: in gulps
 * of 20 ms, by a thread that is at times late.
 */
class ClockFitTest {

  private static final long START = 7_000_000_000_000L;
  private static final long BLOCK_MICROS = 10_000;

  /** Positions taken in gulps, seen late; the truth is {@code START + position * rate + gap}. */
  private static final class Device {
    private final Random random = new Random(1);
    private final ClockFit fit = new ClockFit(0, START);
    private final double rate;
    private long gapNanos;
    private long position;

    Device(double partsPerMillion) {
      rate = 1000 * (1 + partsPerMillion / 1e6);
    }

    long truth(long micros) {
      return START + Math.round(micros * rate) + gapNanos;
    }

    void play(double seconds) {
      long end = position + Math.round(seconds * 1e6);
      while (position < end) {
        position += BLOCK_MICROS;
        long gulp = random.nextInt(20_000_000);
        long late = random.nextInt(100) == 0 ? random.nextInt(80_000_000) : 0;
        fit.observe(position, truth(position) + gulp + late);
      }
    }

    double errorMillis() {
      return (fit.nanoTimeAt(position) - truth(position)) / 1e6;
    }
  }

  @Test
  void a_device_seen_in_gulps_and_late_is_known_to_2_ms() {
    Device device = new Device(0);
    device.play(3);
    for (int i = 0; i < 60; i++) {
      device.play(1);
      assertEquals(0.8, device.errorMillis(), 2, "at " + device.position);
    }
  }

  @Test
  void a_device_that_runs_slow_by_300_ppm_is_followed() {
    Device device = new Device(300);
    device.play(60);
    assertEquals(300, device.fit.driftPartsPerMillion(), 100);
    assertEquals(0.8, device.errorMillis(), 2);
  }

  @Test
  void both_directions_undo_each_other() {
    Device device = new Device(-120);
    device.play(20);
    for (long micros = 0; micros < 40_000_000; micros += 777_777) {
      long there = device.fit.nanoTimeAt(micros);
      assertTrue(Math.abs(device.fit.microsAt(there) - micros) <= 1);
    }
  }

  @Test
  void a_buffer_that_ran_dry_is_a_jump_and_is_learned_within_a_second() {
    Device device = new Device(0);
    device.play(20);
    device.gapNanos += 420_000_000;
    device.play(1);
    assertEquals(1, device.fit.jumps());
    device.play(3);
    assertEquals(0.8, device.errorMillis(), 2);
  }

  @Test
  void one_late_thread_is_no_jump() {
    Device device = new Device(0);
    device.play(20);
    long before = device.fit.nanoTimeAt(device.position);
    long at = device.position;
    for (int i = 0; i < 25; i++) {
      device.position += BLOCK_MICROS;
      device.fit.observe(device.position, device.truth(device.position) + 300_000_000);
    }
    device.play(5);
    assertEquals(0, device.fit.jumps());
    assertTrue(Math.abs(before - device.fit.nanoTimeAt(at)) < 2_000_000);
  }

  @Test
  void the_clock_never_steps_by_more_than_a_judge_would_notice() {
    Device device = new Device(50);
    device.play(4);
    long last = device.fit.nanoTimeAt(device.position);
    for (int i = 0; i < 3000; i++) {
      device.play(0.01);
      long now = device.fit.nanoTimeAt(device.position);
      assertEquals(10, (now - last) / 1e6, 1.1);
      assertTrue(now > last);
      last = now;
    }
  }
}
