package holdfast.listening.microphone;

import java.util.function.LongSupplier;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One line into a microphone, from its opening to its loss, and the thread that empties it. That
 * thread only copies and stamps; it neither waits for anyone nor allocates.
 */
final class OpenLine implements AutoCloseable {

  /** Frames that are read from the device at once, as time: 5 ms. */
  private static final double READ_SECONDS = 0.005;

  /** Room for so long: whoever fetches later has stopped listening, or sleeps. */
  private static final int RING_SECONDS = 4;

  /** A line that gives nothing so many times in a row, this long apart, is dead. */
  private static final int MOST_EMPTY_READS = 50;

  private static final int EMPTY_READ_MILLIS = 10;

  /** How long the reading thread may take to see that it is over. */
  private static final int JOIN_MILLIS = 1000;

  private static final int GONE = -1;

  private static final Logger LOG = LoggerFactory.getLogger(OpenLine.class);

  private final TargetDataLine line;
  private final int rate;
  private final SoundRing ring;
  private final LineReader reader;
  private final Thread thread;
  private final LongSupplier nanoTime;
  private volatile boolean open = true;

  /**
   * Starts a line that was opened, and begins to read it.
   *
   * @param nanoTime the clock that samples are stamped by
   */
  OpenLine(TargetDataLine line, LongSupplier nanoTime) {
    this.line = line;
    this.nanoTime = nanoTime;
    AudioFormat format = line.getFormat();
    this.rate = Math.round(format.getSampleRate());
    this.ring = new SoundRing(RING_SECONDS * rate, rate);
    this.reader = new LineReader(format);
    this.thread = new Thread(this::copy, "microphone");
    thread.setDaemon(true);
    line.start();
    thread.start();
  }

  private void copy() {
    int frames = (int) (READ_SECONDS * rate);
    byte[] bytes = new byte[frames * line.getFormat().getFrameSize()];
    float[] samples = new float[frames];
    int empty = 0;
    while (open && empty < MOST_EMPTY_READS) {
      int got = read(bytes);
      long now = nanoTime.getAsLong();
      if (got > 0) {
        ring.write(samples, reader.read(bytes, got, samples), now);
        empty = 0;
      } else if (got < 0 || !line.isOpen() || !rested()) {
        break;
      } else {
        empty++;
      }
    }
    open = false;
  }

  private int read(byte[] bytes) {
    try {
      return line.read(bytes, 0, bytes.length);
    } catch (RuntimeException driver) {
      // Drivers say in many ways that their device is gone.
      LOG.warn("the microphone failed: {}", driver.toString());
      return GONE;
    }
  }

  private static boolean rested() {
    try {
      Thread.sleep(EMPTY_READ_MILLIS);
      return true;
    } catch (InterruptedException stopped) {
      return false;
    }
  }

  /** Samples per second. */
  int rate() {
    return rate;
  }

  /** What has come in. */
  SoundRing ring() {
    return ring;
  }

  /** Samples so far that stood at full scale. */
  long clipped() {
    return reader.clipped();
  }

  /** Whether more may come. */
  boolean isOpen() {
    return open;
  }

  /** The thread that reads the line, for whoever measures what it costs. */
  Thread thread() {
    return thread;
  }

  @Override
  public void close() {
    open = false;
    line.stop();
    line.close();
    thread.interrupt();
    try {
      thread.join(JOIN_MILLIS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
