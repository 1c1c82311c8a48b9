package holdfast.backing.sound;

import holdfast.time.ClockFit;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import javax.sound.midi.ShortMessage;
import javax.sound.sampled.SourceDataLine;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The synthesizer, drawn block by block into a sound device's line by a thread of its own. When the
 * device goes away the thread keeps drawing at the pace of the wall clock, silently, and looks for
 * the device again now and then: the take goes on.
 */
final class LineOut implements SoundOut {

  private static final Logger LOG = LoggerFactory.getLogger(LineOut.class);

  private static final int FRAME_BYTES = StreamSynth.FORMAT.getFrameSize();
  private static final double FRAMES_PER_SECOND = StreamSynth.FORMAT.getFrameRate();

  /** One block is 441 frames, 10 ms: a gulp that no device minds. */
  private static final int BLOCK_FRAMES = 441;

  private static final long BLOCK_NANOS = 10_000_000;

  /** From its stamp to the line a note takes so long, always. */
  private static final long SYNTH_DELAY_MICROS = micros(StreamSynth.DELAY_FRAMES);

  /** How often a lost device is looked for. */
  private static final long LOOK_AGAIN_NANOS = 2_000_000_000;

  /**
   * Of full scale and block: a change of volume takes a tenth of a second, so it does not click.
   */
  private static final double VOLUME_STEP = 0.1;

  private static final String DEVICE_GONE =
      "The sound device went away; the take goes on in silence.";

  private static final String SYNTH_GONE =
      "The instruments broke off; the take goes on in silence.";

  private final StreamSynth synth;
  private final OutputLine.Source source;
  private final long latencyNanos;
  private final ClockFit fit;
  private final Thread pump;
  private final AtomicBoolean closed = new AtomicBoolean();

  /** Of the sound's own thread. */
  private boolean synthLives = true;

  private volatile long madeFrames;
  private volatile long bufferMicros;
  private volatile double volume;
  private volatile Optional<String> trouble;
  private final SoundTap tap = new SoundTap();
  private final AtomicInteger gaps = new AtomicInteger();

  /**
   * @param latencyNanos how long the device takes from its buffer to the ear
   */
  LineOut(
      StreamSynth synth,
      OutputLine.Source source,
      SourceDataLine first,
      double volume,
      long latencyNanos,
      Optional<String> trouble) {
    this.synth = synth;
    this.source = source;
    this.volume = volume;
    this.latencyNanos = latencyNanos;
    this.trouble = trouble;
    this.bufferMicros = micros(first.getBufferSize() / FRAME_BYTES);
    this.fit = new ClockFit(0, System.nanoTime());
    this.pump = thread(() -> pump(first));
    pump.start();
  }

  // On Windows and macOS the priority keeps the sound whole while others compute; Linux ignores it.
  @SuppressWarnings("ThreadPriorityCheck")
  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "holdfast-sound");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    return thread;
  }

  private static long micros(long frames) {
    return Math.round(frames * 1e6 / FRAMES_PER_SECOND);
  }

  private void pump(SourceDataLine first) {
    byte[] block = new byte[BLOCK_FRAMES * FRAME_BYTES];
    Gain gain = new Gain(volume, VOLUME_STEP);
    Optional<SourceDataLine> line = Optional.of(first);
    while (!closed.get()) {
      if (line.isPresent()) {
        play(line.get(), block, gain);
        line.get().close();
        line = Optional.empty();
        if (!closed.get()) {
          trouble = Optional.of(synthLives ? DEVICE_GONE : SYNTH_GONE);
        }
      } else {
        keepTime(block);
        // A synthesizer that is no more has nothing to say to any device.
        line = synthLives ? source.open() : line;
        if (line.isPresent()) {
          bufferMicros = micros(line.get().getBufferSize() / FRAME_BYTES);
          trouble = Optional.empty();
        }
      }
    }
  }

  /** Draws and writes until the output is closed or the line takes no more. */
  private void play(SourceDataLine line, byte[] block, Gain gain) {
    int bufferFrames = line.getBufferSize() / FRAME_BYTES;
    long writtenFrames = 0;
    boolean flowing = false;
    line.start();
    while (!closed.get()) {
      if (!draw(block)) {
        return;
      }
      gain.apply(block, volume);
      int taken = write(line, block);
      long now = System.nanoTime();
      if (taken < block.length) {
        return;
      }
      tap.write(block);
      writtenFrames += BLOCK_FRAMES;
      long made = madeFrames + BLOCK_FRAMES;
      madeFrames = made;
      int waiting = bufferFrames - line.available() / FRAME_BYTES;
      // Until the buffer has been full once, the device has not begun to take sound steadily.
      if (writtenFrames > 2L * bufferFrames) {
        if (waiting > BLOCK_FRAMES) {
          flowing = true;
        } else if (flowing) {
          gaps.incrementAndGet();
          flowing = false;
        }
        fit.observe(micros(made - Math.max(0, waiting)), now);
      }
    }
  }

  private boolean draw(byte[] block) {
    synthLives = synth.draw(block);
    return synthLives;
  }

  private static int write(SourceDataLine line, byte[] block) {
    try {
      return line.write(block, 0, block.length);
    } catch (RuntimeException driver) {
      // Drivers say in many ways that their device is gone; the thread that keeps time goes on.
      LOG.warn("the sound device failed: {}", driver.toString());
      return 0;
    }
  }

  /** Draws and throws away, at the pace of the wall clock, until it is time to look again. */
  private void keepTime(byte[] block) {
    long start = System.nanoTime();
    long due = start;
    while (!closed.get() && due - start < LOOK_AGAIN_NANOS) {
      if (synthLives && !draw(block) && !closed.get()) {
        trouble = Optional.of(SYNTH_GONE);
      }
      Arrays.fill(block, (byte) 0);
      tap.write(block);
      long made = madeFrames + BLOCK_FRAMES;
      madeFrames = made;
      due += BLOCK_NANOS;
      while (!closed.get() && due - System.nanoTime() > 0) {
        LockSupport.parkNanos(due - System.nanoTime());
      }
      fit.observe(micros(made) - bufferMicros, due);
    }
  }

  @Override
  public void send(ShortMessage message, long positionMicros) {
    synth.send(message, positionMicros);
  }

  @Override
  public long madeMicros() {
    return micros(madeFrames);
  }

  @Override
  public long nanoTimeToSend(long positionMicros) {
    return fit.nanoTimeAt(positionMicros - bufferMicros - SEND_AHEAD_MICROS);
  }

  @Override
  public long nanoTimeHeard(long positionMicros) {
    return fit.nanoTimeAt(positionMicros + SYNTH_DELAY_MICROS) + latencyNanos;
  }

  @Override
  public long microsHeard(long nanoTime) {
    return fit.microsAt(nanoTime - latencyNanos) - SYNTH_DELAY_MICROS;
  }

  @Override
  public void silence(int channel) {
    synth.sendNow(Messages.channelVolume(channel, 0));
    synth.sendNow(Messages.allSoundOff(channel));
    // What was sent ahead begins unheard, for the volume is down, and is ended when it has begun.
    synth.send(Messages.allSoundOff(channel), madeMicros() + SEND_AHEAD_MICROS);
  }

  @Override
  public void setVolume(double wanted) {
    volume = Math.max(0, Math.min(1, wanted));
  }

  @Override
  public String name() {
    return source.name();
  }

  @Override
  public Optional<SoundTap> tap() {
    return Optional.of(tap);
  }

  @Override
  public double latencySeconds() {
    return latencyNanos * 1e-9;
  }

  @Override
  public Optional<String> trouble() {
    return trouble;
  }

  @Override
  public int gaps() {
    return gaps.get();
  }

  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      LockSupport.unpark(pump);
      try {
        pump.join(1000);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      synth.close();
    }
  }
}
