package holdfast.listening.audio;

import holdfast.mistake.UserMistake;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Reads RIFF/WAVE files as they come: PCM of 8, 16, 24 and 32 bits, IEEE floats, {@code
 * WAVE_FORMAT_EXTENSIBLE}, chunks in any order and of any kind, files cut off in the middle or
 * written by a recorder that never filled in the lengths, and RF64 (EBU Tech 3306). Formats: IBM
 * and Microsoft, "Multimedia Programming Interface and Data Specifications 1.0" (1991), and
 * Microsoft's "Multiple channel audio data and WAVE files" (2001).
 */
public final class WaveFile {

  private static final int PCM = 1;
  private static final int IEEE_FLOAT = 3;
  private static final int EXTENSIBLE = 0xfffe;

  /** Rates that recorders use lie within these. */
  private static final int LOWEST_RATE = 8_000;

  private static final int HIGHEST_RATE = 192_000;

  /** Longest take that is read whole: 2.5 hours at 48 kHz fit the array of one sound. */
  private static final long MOST_FRAMES = 480_000_000;

  private static final int BLOCK_FRAMES = 1 << 14;

  private final String name;
  private int encoding;
  private int channels;
  private int rate;
  private int bits;

  private WaveFile(String name) {
    this.name = name;
  }

  /**
   * Reads a file to mono; of several channels the better one, which is the louder.
   *
   * @throws UserMistake in one sentence, when this is no sound that can be read
   * @throws IOException when the disk fails
   */
  public static Sound read(Path file) throws IOException {
    WholeSound whole = new WholeSound();
    read(file, whole);
    return whole.sound();
  }

  /** The same, told block by block. */
  static void read(Path file, SampleSink sink) throws IOException {
    try (FileChannel channel = FileChannel.open(file)) {
      new WaveFile(file.getFileName().toString()).read(channel, sink);
    }
  }

  private void read(FileChannel channel, SampleSink sink) throws IOException {
    ByteBuffer head = bytes(channel, 12);
    if (head.remaining() < 12
        || !(tag(head, 0).equals("RIFF") || tag(head, 0).equals("RF64"))
        || !tag(head, 8).equals("WAVE")) {
      throw new UserMistake(
          name + " is not a WAV file (it does not begin with RIFF and WAVE); export it as WAV");
    }
    while (true) {
      ByteBuffer chunk = bytes(channel, 8);
      if (chunk.remaining() < 8) {
        throw new UserMistake(
            name
                + " ends before its sound begins (no \"data\" chunk by byte "
                + channel.size()
                + "); copy or export it again");
      }
      String id = tag(chunk, 0);
      long size = chunk.getInt(4) & 0xffffffffL;
      if (id.equals("data")) {
        if (rate == 0) {
          throw new UserMistake(
              name + " has its sound before its format (no \"fmt \" chunk); export it again");
        }
        readData(channel, Math.min(size, channel.size() - channel.position()), sink);
        return;
      }
      long next = channel.position() + size + (size & 1);
      if (id.equals("fmt ")) {
        readFormat(bytes(channel, (int) Math.min(size, 40)));
      }
      channel.position(Math.min(next, channel.size()));
    }
  }

  private void readFormat(ByteBuffer format) {
    if (format.remaining() < 16) {
      throw new UserMistake(
          name
              + " has a \"fmt \" chunk of "
              + format.remaining()
              + " bytes, 16 are needed;"
              + " export it again");
    }
    encoding = format.getShort(0) & 0xffff;
    channels = format.getShort(2) & 0xffff;
    rate = format.getInt(4);
    bits = format.getShort(14) & 0xffff;
    if (encoding == EXTENSIBLE && format.remaining() >= 26) {
      encoding = format.getShort(24) & 0xffff;
    }
    if (channels < 1 || channels > 64) {
      throw new UserMistake(
          name + " says it has " + channels + " channels; 1 or 2 are read: export it as mono");
    }
    checkRate(name, rate);
    sampleFormat();
  }

  /**
   * Whether a recorder could have made so many samples a second.
   *
   * @throws UserMistake when not
   */
  static void checkRate(String name, int rate) {
    if (rate < LOWEST_RATE || rate > HIGHEST_RATE) {
      throw new UserMistake(
          name
              + " says it has "
              + Integer.toUnsignedString(rate)
              + " samples a second; 8000 to 192000 are read: export it at 44100");
    }
  }

  private SampleFormat sampleFormat() {
    if (encoding == PCM && bits == 8) {
      return SampleFormat.UNSIGNED_8;
    } else if (encoding == PCM && bits == 16) {
      return SampleFormat.SIGNED_16;
    } else if (encoding == PCM && bits == 24) {
      return SampleFormat.SIGNED_24;
    } else if (encoding == PCM && bits == 32) {
      return SampleFormat.SIGNED_32;
    } else if (encoding == IEEE_FLOAT && bits == 32) {
      return SampleFormat.FLOAT_32;
    } else if (encoding == IEEE_FLOAT && bits == 64) {
      return SampleFormat.FLOAT_64;
    }
    throw new UserMistake(
        String.format(
            Locale.ROOT,
            "%s holds samples of a kind that is not read (format %d, %d bits); export it as 16-bit"
                + " PCM",
            name,
            encoding,
            bits));
  }

  private void readData(FileChannel channel, long size, SampleSink sink) throws IOException {
    SampleFormat format = sampleFormat();
    int frameBytes = format.bytes() * channels;
    long frames = size / frameBytes;
    if (frames == 0) {
      throw new UserMistake(name + " has no sound in it (its \"data\" chunk is empty)");
    }
    if (frames > MOST_FRAMES) {
      throw new UserMistake(
          name + " is longer than can be read at once; cut it into takes of two hours or less");
    }
    int used = Math.min(2, channels);
    sink.begin(rate, used);
    float[][] sound = new float[used][BLOCK_FRAMES];
    ByteBuffer block =
        ByteBuffer.allocate(BLOCK_FRAMES * frameBytes).order(ByteOrder.LITTLE_ENDIAN);
    for (long done = 0; done < frames; ) {
      int want = (int) Math.min(BLOCK_FRAMES, frames - done);
      block.clear().limit(want * frameBytes);
      try {
        fill(channel, block);
      } catch (EOFException cutOff) {
        return;
      }
      for (int c = 0; c < used; c++) {
        format.read(block, channels, c, sound[c], want);
      }
      sink.take(sound, want);
      done += want;
    }
  }

  private static void fill(ReadableByteChannel channel, ByteBuffer buffer) throws IOException {
    while (buffer.hasRemaining()) {
      if (channel.read(buffer) < 0) {
        throw new EOFException();
      }
    }
  }

  /** Up to so many bytes; fewer where the file ends. */
  private static ByteBuffer bytes(FileChannel channel, int count) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
    while (buffer.hasRemaining() && channel.read(buffer) >= 0) {
      // Short reads go on until the file ends.
    }
    return buffer.flip();
  }

  private static String tag(ByteBuffer buffer, int at) {
    StringBuilder tag = new StringBuilder();
    for (int i = 0; i < 4; i++) {
      tag.append((char) (buffer.get(at + i) & 0xff));
    }
    return tag.toString();
  }
}
