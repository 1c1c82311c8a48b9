package holdfast.listening.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.backing.sound.OutputLine;
import holdfast.listening.BusyMachine;
import holdfast.listening.microphone.LineSamples;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.SourceDataLine;
import org.junit.jupiter.api.Test;

/**
 * Calibration through the machine's devices. Needs the loop that {@code .ci/audio-loop} makes. The
 * truth is told by a third recorder that is none of ours: PulseAudio's parec listens to the same
 * sink, its bytes are stamped as they come, and the chirp is looked for in them too.
 */
class LoopThroughDevicesTest {

  private static final double TRUE_WITHIN_SECONDS = 0.002;
  private static final int RATE = 44_100;

  /** A machine that starves the devices of sound measures itself, not us; then once more. */
  private static final int TRIES = 3;

  private static void needsLoop() {
    assumeTrue(
        System.getenv("HOLDFAST_AUDIO_LOOP") != null,
        "skipped: no audio loop; source .ci/audio-loop and call audio_loop_start");
  }

  /** Another recorder, with the moment at which each of its bytes came. */
  private static final class ThirdRecorder implements AutoCloseable {
    private final Process process;
    private final Thread thread;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final List<long[]> stamps = new ArrayList<>();

    ThirdRecorder() throws IOException {
      process =
          new ProcessBuilder(
                  "parec",
                  "--raw",
                  "--format=s16le",
                  "--rate=" + RATE,
                  "--channels=1",
                  "--latency-msec=1")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      thread = new Thread(this::record, "third recorder");
      thread.start();
    }

    private void record() {
      try (InputStream in = process.getInputStream()) {
        byte[] block = new byte[4096];
        for (int got = in.read(block); got >= 0; got = in.read(block)) {
          bytes.write(block, 0, got);
          stamps.add(new long[] {bytes.size() / 2, System.nanoTime()});
        }
      } catch (IOException ended) {
        // The process was stopped while we read.
      }
    }

    float[] samples() {
      byte[] all = bytes.toByteArray();
      float[] samples = new float[all.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (short) ((all[2 * i] & 0xff) | all[2 * i + 1] << 8) / 32768f;
      }
      return samples;
    }

    /** The moment of a sample: round it, the earliest stamp counts. */
    double secondsOf(double sample) {
      return stamps.stream()
              .filter(s -> Math.abs(s[0] - sample) < 0.4 * RATE)
              .mapToDouble(s -> s[1] * 1e-9 - (double) s[0] / RATE)
              .min()
              .orElse(Double.NaN)
          + sample / RATE;
    }

    /** How long after each of these moments, in seconds, the chirp is there. */
    List<Double> delays(List<Double> left) {
      float[] all = samples();
      List<Double> delays = new ArrayList<>();
      for (double moment : left) {
        int from = (int) Math.max(0, (moment - secondsOf(RATE) + 1 - 0.2) * RATE);
        int to = Math.min(all.length, from + (int) (1.3 * RATE));
        if (to <= from) {
          continue;
        }
        Chirp.find(Arrays.copyOfRange(all, from, to), RATE)
            .ifPresent(at -> delays.add(secondsOf(from + at) - moment));
      }
      return delays;
    }

    @Override
    public void close() {
      process.destroy();
      try {
        thread.join(2000);
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
      }
    }
  }

  @Test
  void the_loops_delay_is_what_a_third_recorder_says_within_2_ms() throws Exception {
    needsLoop();
    Heard heard = measure();
    for (int again = 1; again < TRIES && !heard.isSteady(); again++) {
      heard = measure();
    }
    BusyMachine.excuse(
        heard.isSteady(), "the third recorder's own times do not agree: " + heard.truths());
    LoopDelay delay = heard.delay().orElseThrow();
    System.out.printf(
        Locale.ROOT, "loop %.2f ms, truth %.2f ms%n", 1000 * delay.seconds(), 1000 * heard.truth());
    assertEquals(heard.truth(), delay.seconds(), TRUE_WITHIN_SECONDS);
  }

  /** What Holdfast measured, and what the third recorder says of each chirp. */
  private record Heard(Optional<LoopDelay> delay, List<Double> truths) {

    /** Whether the third recorder, whose word is to count, was not starved itself. */
    boolean isSteady() {
      return truths.size() >= 3
          && truths.get(truths.size() - 1) - truths.get(0) <= TRUE_WITHIN_SECONDS;
    }

    double truth() {
      return truths.get(truths.size() / 2);
    }
  }

  private static Heard measure() throws Exception {
    OutputLine.Open open = OutputLine.open(Optional.empty(), 250).orElseThrow();
    List<Double> left = new ArrayList<>();
    ThirdRecorder third = new ThirdRecorder();
    Optional<LoopDelay> delay;
    try (SourceDataLine speaker = open.line();
        LineSamples line = new LineSamples("")) {
      speaker.start();
      line.forget();
      delay = Loop.measure(new SoundLoop(speaker, line), left::add);
    } finally {
      third.close();
    }
    return new Heard(delay, third.delays(left).stream().sorted().toList());
  }
}
