package holdfast.listening.pitch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import holdfast.listening.audio.Resampler;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sound that no microphone should give, and takes that are very long. */
class BadSoundTest {

  private static final NoteListener NOBODY =
      new NoteListener() {
        @Override
        public void began(double onsetSeconds, double cents, double levelDb) {}

        @Override
        public void ended(
            double onsetSeconds, double end, double cents, double levelDb, double confidence) {}

        @Override
        public void takenBack() {}
      };

  @ParameterizedTest(name = "live: {0}")
  @ValueSource(booleans = {false, true})
  void samples_that_are_no_numbers_count_as_silence(boolean live) {
    float[] broken = scale().samples();
    float[] silent = broken.clone();
    float[] bad = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY};
    for (int i = 0; i < 400; i++) {
      broken[20_000 + i] = bad[i % 3];
      silent[20_000 + i] = 0;
    }
    List<TestVoice.Note> heard = TestVoice.heard(broken, live);
    assertEquals(TestVoice.heard(silent, live), heard);
    assertTrue(heard.size() >= 3, "heard " + heard);
  }

  @Test
  void a_take_of_nothing_but_no_numbers_has_no_notes() {
    float[] broken = new float[3 * Resampler.EAR_RATE];
    Arrays.fill(broken, Float.NaN);
    assertEquals(List.of(), TestVoice.heard(broken, true));
    assertEquals(List.of(), TestVoice.heard(broken, false));
  }

  @ParameterizedTest(name = "{0} s of silence")
  @ValueSource(doubles = {0, 0.001, 0.1, 30})
  void silence_has_no_notes(double seconds) {
    float[] silence = new float[(int) (seconds * Resampler.EAR_RATE)];
    assertEquals(List.of(), TestVoice.heard(silence, true));
    assertEquals(List.of(), TestVoice.heard(silence, false));
  }

  @ParameterizedTest(name = "live: {0}")
  @ValueSource(booleans = {false, true})
  void a_voice_that_clips_keeps_its_pitches(boolean live) {
    float[] loud = scale().samples();
    for (int i = 0; i < loud.length; i++) {
      loud[i] = Math.max(-1, Math.min(1, 20 * loud[i]));
    }
    List<TestVoice.Note> heard = TestVoice.heard(loud, live);
    assertEquals(3, heard.size(), "heard " + heard);
    assertEquals(6000, heard.get(0).cents(), 10);
    assertEquals(6400, heard.get(1).cents(), 10);
    assertEquals(6700, heard.get(2).cents(), 10);
  }

  /** The counter is the JDK's own, of the bytes that this thread has allocated. */
  @Test
  void in_steady_state_the_live_ear_allocates_nothing() {
    float[] samples = scale().samples();
    Ear ear =
        Ear.early(
            48_000,
            Ear.LOWEST_HZ,
            Ear.HIGHEST_HZ,
            Levels.UNKNOWN,
            (frame, cents, sung, sure, level, flux) -> {},
            NOBODY,
            NOBODY);
    push(ear, samples, 2);
    ThreadMXBean counter = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    counter.getThreadAllocatedBytes(thread);
    long before = counter.getThreadAllocatedBytes(thread);
    push(ear, samples, 10);
    assertEquals(0, counter.getThreadAllocatedBytes(thread) - before);
  }

  /**
   * What is kept of a take does not grow with it: where nothing is allocated, nothing grows; and
   * the counters hold out for longer than two hours.
   */
  @Test
  void quantiles_stay_right_over_two_hours_of_frames() {
    Histogram histogram = new Histogram(-120, 1, 128, 4000);
    long frames = Math.round(2 * 3600 / Frames.HOP_SECONDS);
    for (long frame = 0; frame < frames; frame++) {
      histogram.add(-60.0 + frame % 40, 1);
      histogram.age();
    }
    assertEquals(-40, histogram.quantile(0.5, 0), 1);
    assertEquals(-24, histogram.quantile(0.9, 0), 1);
  }

  private static TestVoice scale() {
    return new TestVoice(3)
        .note(0.4, 1.0, 6000, TestVoice.OPEN)
        .note(1.1, 1.7, 6400, TestVoice.OPEN)
        .note(1.8, 2.4, 6700, TestVoice.OPEN);
  }

  private static void push(Ear ear, float[] samples, int times) {
    for (int n = 0; n < times; n++) {
      for (int i = 0; i + 240 <= samples.length; i += 240) {
        ear.push(samples, i, 240);
      }
    }
  }
}
