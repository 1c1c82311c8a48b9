package holdfast.listening.audio;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Sound at the ear's rate in a file of its own among the system's temporary files, gone when it is
 * closed. Of two channels the louder is kept.
 */
public final class EarTape implements EarSound {

  private static final int SAMPLE_BYTES = Float.BYTES;
  private static final int BLOCK_SAMPLES = 1 << 14;

  private final Track track;
  private final long length;
  private final int clipped;

  private EarTape(Track track, long length, int clipped) {
    this.track = track;
    this.length = length;
    this.clipped = clipped;
  }

  /** Samples that stood at full scale as they were recorded: too hot where there are many. */
  public int clipped() {
    return clipped;
  }

  @Override
  public long length() {
    return length;
  }

  @Override
  public void read(long from, float[] to, int offset, int count) {
    track.read(from, to, offset, count, length);
  }

  @Override
  public void close() {
    track.close();
  }

  /** Writes a tape from samples of any rate. */
  static final class Writer implements SampleSink, AutoCloseable {

    private final Loudness loudness = new Loudness();
    private final List<Track> tracks = new ArrayList<>();
    private int rate;
    private long frames;

    @Override
    public void begin(int samplesPerSecond, int channels) throws IOException {
      this.rate = samplesPerSecond;
      for (int c = 0; c < channels; c++) {
        tracks.add(new Track(samplesPerSecond));
      }
    }

    @Override
    public void take(float[][] block, int count) throws IOException {
      for (int c = 0; c < tracks.size(); c++) {
        tracks.get(c).write(block[c], count);
      }
      loudness.hear(block, tracks.size(), count);
      frames += count;
    }

    EarTape tape() throws IOException {
      int better = loudness.louder();
      Track kept = tracks.get(better);
      // A little silence at the end pushes the last samples through the filter.
      kept.write(new float[rate / 50], rate / 50);
      long wanted = frames * Resampler.EAR_RATE / rate;
      tracks.remove(better);
      return new EarTape(kept, Math.min(kept.written, wanted), loudness.clipped(better));
    }

    @Override
    public void close() {
      for (Track left : tracks) {
        left.close();
      }
    }
  }

  /** One channel in its temporary file: written to its end, read anywhere. */
  static final class Track {
    private final Resampler resampler;
    private final FileChannel file;
    private final ByteBuffer bytes;
    private final float[] ear;
    private long written;

    Track(int rate) throws IOException {
      this.resampler = new Resampler(rate);
      this.ear = new float[resampler.mostOutput(BLOCK_SAMPLES)];
      this.bytes =
          ByteBuffer.allocate(Math.max(ear.length, BLOCK_SAMPLES) * SAMPLE_BYTES)
              .order(ByteOrder.LITTLE_ENDIAN);
      Path path = Files.createTempFile("holdfast", ".ear");
      this.file =
          FileChannel.open(
              path,
              StandardOpenOption.READ,
              StandardOpenOption.WRITE,
              StandardOpenOption.DELETE_ON_CLOSE);
    }

    /** Samples at the ear's rate that are written. */
    long written() {
      return written;
    }

    /** Reads samples; outside of the first {@code length} there is silence. */
    synchronized void read(long from, float[] to, int offset, int count, long length) {
      try {
        int done = 0;
        while (done < count) {
          long at = from + done;
          if (at < 0 || at >= length) {
            int silent = (int) Math.min(count - done, at < 0 ? -at : count - done);
            Arrays.fill(to, offset + done, offset + done + silent, 0f);
            done += silent;
            continue;
          }
          int now = (int) Math.min(Math.min(BLOCK_SAMPLES, count - done), length - at);
          bytes.clear().limit(now * SAMPLE_BYTES);
          while (bytes.hasRemaining()) {
            if (file.read(bytes, at * SAMPLE_BYTES + bytes.position()) < 0) {
              throw new IOException("a temporary file has become shorter");
            }
          }
          bytes.flip().asFloatBuffer().get(to, offset + done, now);
          done += now;
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    void close() {
      try {
        file.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    synchronized void write(float[] samples, int count) throws IOException {
      for (int done = 0; done < count; done += BLOCK_SAMPLES) {
        int made = resampler.push(samples, done, Math.min(BLOCK_SAMPLES, count - done), ear);
        bytes.clear().limit(made * SAMPLE_BYTES);
        bytes.asFloatBuffer().put(ear, 0, made);
        try {
          while (bytes.hasRemaining()) {
            if (file.write(bytes, written * SAMPLE_BYTES + bytes.position()) < 0) {
              throw new IOException("the disk takes no more");
            }
          }
        } catch (IOException full) {
          throw new UserMistake(
              "there is no room for temporary files ("
                  + full.getMessage()
                  + "); free 500 MB and try again",
              full);
        }
        written += made;
      }
    }
  }
}
