package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.backing.sound.SoundChoice;
import holdfast.chart.ChartLibrary;
import holdfast.listening.BusyMachine;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/**
 * What comes out of the loudspeaker, or would: the backing is played through the real devices and
 * recorded again. Needs the loop that {@code .ci/audio-loop} makes, and a minute.
 */
class AudioLoopTest {

  /** Issue of the house: every onset within 2 ms of its beat, relative to the first. */
  private static final double LARGEST_ERROR_MILLIS = 2;

  /** A machine that starves the device of sound measures itself, not us; then once more. */
  private static final int TRIES = 3;

  @Test
  void every_onset_of_a_minute_of_backing_is_heard_within_2_ms_of_its_beat()
      throws InterruptedException {
    assumeTrue(
        System.getenv("HOLDFAST_AUDIO_LOOP") != null,
        "skipped: no audio loop; source .ci/audio-loop and call audio_loop_start");
    Arrangement arrangement =
        Arrangement.of(
            ChartLibrary.open("lantern-turn"), Feel.BALLAD, 68, Optional.empty(), Optional.empty());
    // 4 beats of count and 2 choruses of 32 at 68 beats a minute: a minute.
    Performance performance =
        new Performance(arrangement, OptionalInt.of(2), 1, EnumSet.noneOf(Part.class));
    BackingBench.Measured measured = BackingBench.run(performance, SoundChoice.usual(), false);
    for (int again = 1; again < TRIES && measured.gaps() > 0; again++) {
      measured = BackingBench.run(performance, SoundChoice.usual(), false);
    }
    BusyMachine.excuse(measured.gaps() == 0, "the sound broke off each time");
    assertEquals(Optional.empty(), measured.trouble());
    OnsetErrors onsets = measured.onsets().orElseThrow();
    assertEquals(68, onsets.millis().size());
    assertTrue(onsets.worstLikeness() > 0.9, "likeness " + onsets.worstLikeness());
    assertTrue(
        onsets.maxMillis() <= LARGEST_ERROR_MILLIS, "largest error " + onsets.maxMillis() + " ms");
  }
}
