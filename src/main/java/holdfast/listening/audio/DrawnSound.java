package holdfast.listening.audio;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Sound that is made as far as it is asked for, and kept: a stream of 16 bit little-endian stereo
 * at the ear's rate on a temporary file, both channels added up, as a microphone hears two
 * loudspeakers. It may be read from several threads.
 */
public final class DrawnSound implements EarSound {

  private static final int FRAME_BYTES = 4;
  private static final int BLOCK = 1 << 14;

  private final InputStream stream;
  private final EarTape.Track track;
  private final long length;
  private final byte[] bytes = new byte[BLOCK * FRAME_BYTES];
  private final float[] mono = new float[BLOCK];
  private boolean ended;

  /**
   * A sound of which nothing is made yet.
   *
   * @param stream where it is drawn from; closed with this
   * @param rate samples per second of the stream
   * @param seconds how long it is
   */
  public DrawnSound(InputStream stream, int rate, double seconds) {
    this.stream = stream;
    this.length = (long) (seconds * Resampler.EAR_RATE);
    try {
      this.track = new EarTape.Track(rate);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public long length() {
    return length;
  }

  @Override
  public synchronized void read(long from, float[] to, int offset, int count) {
    try {
      while (!ended && track.written() < Math.min(from + count, length)) {
        draw();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    track.read(from, to, offset, count, Math.min(length, track.written()));
  }

  private void draw() throws IOException {
    int frames = stream.readNBytes(bytes, 0, bytes.length) / FRAME_BYTES;
    ended = frames < BLOCK;
    ByteBuffer view = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < BLOCK; i++) {
      // After the end comes silence, which pushes the last samples through the filter.
      mono[i] =
          i < frames
              ? (view.getShort(FRAME_BYTES * i) + view.getShort(FRAME_BYTES * i + 2)) / 65536f
              : 0;
    }
    track.write(mono, BLOCK);
  }

  @Override
  public void close() {
    track.close();
    try {
      stream.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
