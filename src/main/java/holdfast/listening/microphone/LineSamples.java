package holdfast.listening.microphone;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;

/** A microphone as plain samples, read by whoever waits for them: for calibration. */
public final class LineSamples implements AutoCloseable {

  private static final int BLOCK_FRAMES = 480;

  private final TargetDataLine line;
  private final LineReader reader;
  private final byte[] bytes;
  private final float[] block = new float[BLOCK_FRAMES];

  /** Opens and starts the device whose name holds these words; see {@link Microphone#openLine}. */
  public LineSamples(String name) {
    this.line = Microphone.openLine(name);
    AudioFormat format = line.getFormat();
    this.reader = new LineReader(format);
    this.bytes = new byte[BLOCK_FRAMES * format.getFrameSize()];
    line.start();
  }

  /** Samples per second. */
  public int rate() {
    return Math.round(line.getFormat().getSampleRate());
  }

  /**
   * Waits for samples and gives how many came, less than asked for only when the line is closed.
   */
  public int read(float[] to, int offset, int length) {
    int done = 0;
    while (done < length) {
      int want = Math.min(BLOCK_FRAMES, length - done);
      int got = line.read(bytes, 0, want * line.getFormat().getFrameSize());
      if (got <= 0) {
        break;
      }
      int count = reader.read(bytes, got, block);
      System.arraycopy(block, 0, to, offset + done, count);
      done += count;
    }
    return done;
  }

  /** Samples that have been recorded and not been read. */
  public int waiting() {
    return line.available() / line.getFormat().getFrameSize();
  }

  /** Lets go of what waits. */
  public void forget() {
    line.flush();
  }

  /** Samples so far that stood at full scale. */
  public long clipped() {
    return reader.clipped();
  }

  @Override
  public void close() {
    line.stop();
    line.close();
  }
}
