package holdfast.backing.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sound.sampled.SourceDataLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A sound device that is pulled out and plugged in again, played by a line of the test's own. */
@Timeout(60)
class LineOutTest {

  private static final int BUFFER_BYTES = 44_100 * 4 / 10;

  /** A line that takes so many blocks, 10 ms each, and then no more. */
  private static SourceDataLine line(int blocks, AtomicInteger taken) {
    AtomicInteger left = new AtomicInteger(blocks);
    return (SourceDataLine)
        Proxy.newProxyInstance(
            LineOutTest.class.getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getBufferSize" -> BUFFER_BYTES;
                  case "available" -> 0;
                  case "write" -> {
                    Thread.sleep(1);
                    if (left.getAndDecrement() <= 0) {
                      yield 0;
                    }
                    taken.incrementAndGet();
                    yield arguments[2];
                  }
                  default -> null;
                });
  }

  @Test
  void a_device_that_goes_away_leaves_silence_in_time_and_is_used_again_when_it_is_back()
      throws InterruptedException {
    AtomicInteger taken = new AtomicInteger();
    AtomicInteger takenAgain = new AtomicInteger();
    OutputLine.Source source =
        new OutputLine.Source() {
          @Override
          public String name() {
            return "a headset";
          }

          @Override
          public Optional<SourceDataLine> open() {
            return Optional.of(line(Integer.MAX_VALUE, takenAgain));
          }
        };
    StreamSynth synth = StreamSynth.open(SoundBank.builtIn()).orElseThrow();
    try (LineOut out = new LineOut(synth, source, line(30, taken), 0.5, 0, Optional.empty())) {
      while (out.trouble().isEmpty()) {
        Thread.sleep(1);
      }
      assertEquals(30, taken.get());
      assertEquals(
          Optional.of("The sound device went away; the take goes on in silence."), out.trouble());
      long lost = out.madeMicros();
      while (takenAgain.get() == 0) {
        Thread.sleep(1);
      }
      // Two seconds of silence were drawn meanwhile, so that the beat is where it would have been.
      long missing = out.madeMicros() - lost;
      assertTrue(missing >= 1_900_000, missing + " µs passed");
      while (out.trouble().isPresent()) {
        Thread.sleep(1);
      }
      assertEquals("a headset", out.name());
    }
  }

  /** A line whose buffer has run dry once, when so many blocks have been written. */
  private static SourceDataLine drying(int after) {
    AtomicInteger written = new AtomicInteger();
    return (SourceDataLine)
        Proxy.newProxyInstance(
            LineOutTest.class.getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getBufferSize" -> BUFFER_BYTES;
                  case "available" -> written.get() == after ? BUFFER_BYTES : 0;
                  case "write" -> {
                    Thread.sleep(1);
                    written.incrementAndGet();
                    yield arguments[2];
                  }
                  default -> null;
                });
  }

  @Test
  void a_buffer_that_runs_dry_is_counted_and_the_sound_goes_on() throws InterruptedException {
    StreamSynth synth = StreamSynth.open(SoundBank.builtIn()).orElseThrow();
    try (LineOut out = new LineOut(synth, gone(), drying(40), 0.5, 0, Optional.empty())) {
      while (out.madeMicros() < 500_000) {
        Thread.sleep(1);
      }
      assertEquals(1, out.gaps());
      assertEquals(Optional.empty(), out.trouble());
    }
  }

  /** A line that takes a few blocks and then behaves so. */
  private static SourceDataLine failingLine(int blocks, RuntimeException failure) {
    AtomicInteger left = new AtomicInteger(blocks);
    return (SourceDataLine)
        Proxy.newProxyInstance(
            LineOutTest.class.getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getBufferSize" -> BUFFER_BYTES;
                  case "available" -> 0;
                  case "write" -> {
                    Thread.sleep(1);
                    if (left.getAndDecrement() <= 0) {
                      throw failure;
                    }
                    yield arguments[2];
                  }
                  default -> null;
                });
  }

  private static OutputLine.Source gone() {
    return new OutputLine.Source() {
      @Override
      public String name() {
        return "a headset";
      }

      @Override
      public Optional<SourceDataLine> open() {
        return Optional.empty();
      }
    };
  }

  @Test
  void a_device_that_fails_while_it_is_written_to_leaves_silence_in_time()
      throws InterruptedException {
    StreamSynth synth = StreamSynth.open(SoundBank.builtIn()).orElseThrow();
    SourceDataLine line = failingLine(5, new IllegalStateException("the driver is gone"));
    try (LineOut out = new LineOut(synth, gone(), line, 0.5, 0, Optional.empty())) {
      awaitTrouble(out, "The sound device went away; the take goes on in silence.");
      assertTimeGoesOn(out);
    }
  }

  @Test
  void a_synthesizer_that_dies_is_told_and_the_time_goes_on() throws InterruptedException {
    StreamSynth synth = StreamSynth.open(SoundBank.builtIn()).orElseThrow();
    SourceDataLine line = line(Integer.MAX_VALUE, new AtomicInteger());
    try (LineOut out = new LineOut(synth, gone(), line, 0.5, 0, Optional.empty())) {
      while (out.madeMicros() < 50_000) {
        Thread.sleep(1);
      }
      synth.close();
      awaitTrouble(out, "The instruments broke off; the take goes on in silence.");
      assertTimeGoesOn(out);
      // Messages for a synthesizer that is no more do no harm to whoever sends them.
      out.send(Messages.channelVolume(1, 64), out.madeMicros());
      out.silence(1);
    }
  }

  private static void awaitTrouble(LineOut out, String sentence) throws InterruptedException {
    while (out.trouble().isEmpty()) {
      Thread.sleep(1);
    }
    assertEquals(Optional.of(sentence), out.trouble());
  }

  private static void assertTimeGoesOn(LineOut out) throws InterruptedException {
    long made = out.madeMicros();
    while (out.madeMicros() < made + 100_000) {
      Thread.sleep(1);
    }
  }

  @Test
  void a_change_of_volume_glides_and_ends_where_it_should() {
    Gain gain = new Gain(0, 0.25);
    byte[] block = new byte[400];
    for (int round = 1; round <= 5; round++) {
      for (int i = 0; i < block.length; i += 2) {
        block[i] = (byte) 10_000;
        block[i + 1] = (byte) (10_000 >> 8);
      }
      gain.apply(block, 1);
      int last = (block[398] & 0xFF) | block[399] << 8;
      int largest = 10_000 * Math.min(round, 4) / 4;
      assertTrue(last <= largest && last >= largest - 20, round + ": " + last);
    }
  }
}
