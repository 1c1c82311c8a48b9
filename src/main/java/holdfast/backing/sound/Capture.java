package holdfast.backing.sound;

import java.io.ByteArrayOutputStream;
import java.util.Optional;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.TargetDataLine;

/**
 * Records what the system's recording device hears, in the format of the backing: in an audio loop
 * that is what was played. For measuring only; players are heard through {@code
 * holdfast.listening}.
 */
public final class Capture implements AutoCloseable {

  /** Two seconds, so that a machine under load loses nothing. */
  private static final int BUFFER_SECONDS = 2;

  private static final int BLOCK_FRAMES = 1024;

  private final TargetDataLine line;
  private final Thread reader;
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
  private volatile boolean closed;

  private Capture(TargetDataLine line) {
    this.line = line;
    this.reader = new Thread(this::read, "holdfast-capture");
    reader.setDaemon(true);
  }

  /** Starts to record; empty where there is no recording device. */
  public static Optional<Capture> start() {
    try {
      TargetDataLine line = AudioSystem.getTargetDataLine(StreamSynth.FORMAT);
      int bytesPerSecond =
          Math.round(StreamSynth.FORMAT.getFrameRate()) * StreamSynth.FORMAT.getFrameSize();
      line.open(StreamSynth.FORMAT, BUFFER_SECONDS * bytesPerSecond);
      line.start();
      Capture capture = new Capture(line);
      capture.reader.start();
      return Optional.of(capture);
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
      return Optional.empty();
    }
  }

  private void read() {
    byte[] block = new byte[BLOCK_FRAMES * StreamSynth.FORMAT.getFrameSize()];
    while (!closed) {
      int n = line.read(block, 0, block.length);
      if (n <= 0) {
        return;
      }
      synchronized (bytes) {
        bytes.write(block, 0, n);
      }
    }
  }

  /** Both channels added up, full scale 1, since the start. */
  public float[] samples() {
    byte[] all;
    synchronized (bytes) {
      all = bytes.toByteArray();
    }
    return mono(all);
  }

  /** Both channels of 16-bit little-endian stereo added up, full scale 1. */
  public static float[] mono(byte[] stereo) {
    float[] samples = new float[stereo.length / 4];
    for (int i = 0; i < samples.length; i++) {
      int left = (stereo[4 * i] & 0xFF) | stereo[4 * i + 1] << 8;
      int right = (stereo[4 * i + 2] & 0xFF) | stereo[4 * i + 3] << 8;
      samples[i] = (left + right) / 65536f;
    }
    return samples;
  }

  @Override
  public void close() {
    closed = true;
    line.stop();
    line.close();
    try {
      reader.join(1000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
