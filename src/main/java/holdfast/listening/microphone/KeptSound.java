package holdfast.listening.microphone;

import java.io.FileOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What a microphone hears, kept as a WAV file (16 bits, mono) while it comes. The lengths in its
 * head are filled in at the end; until then they say "to the end of the file", as streams do, so
 * that a file whose writer was killed can be read, and {@link #mend} puts them right.
 *
 * <p>A disk that takes no more does not stop the take: the file ends there, and that is told.
 */
public final class KeptSound implements AutoCloseable {

  private static final int HEAD = 44;
  private static final int RIFF_SIZE_AT = 4;
  private static final int DATA_SIZE_AT = 40;

  /** "Until the end of the file". */
  private static final int UNKNOWN_LENGTH = -1;

  /** The longest sound whose length fits the head: 12 hours at 48 kHz. */
  private static final long MOST_BYTES = 0xffff_ffffL - HEAD;

  /** What is written at once: a third of a second. */
  private static final int BLOCK_BYTES = 1 << 15;

  private final Path file;
  private final ByteBuffer block = ByteBuffer.allocate(BLOCK_BYTES).order(ByteOrder.LITTLE_ENDIAN);
  private Optional<FileOutputStream> out;
  private Optional<String> trouble = Optional.empty();
  private long written;

  /** Begins a file. Where it cannot be made, that is told as {@link #trouble}. */
  public KeptSound(Path file, int rate) {
    this.file = file;
    try {
      this.out = Optional.of(new FileOutputStream(file.toFile()));
      head(rate);
    } catch (IOException e) {
      this.out = Optional.empty();
      tell(e);
    }
  }

  private void head(int rate) {
    block.put(tag("RIFF")).putInt(UNKNOWN_LENGTH).put(tag("WAVE"));
    block.put(tag("fmt ")).putInt(16);
    block.putShort((short) 1).putShort((short) 1);
    block.putInt(rate).putInt(2 * rate).putShort((short) 2).putShort((short) 16);
    block.put(tag("data")).putInt(UNKNOWN_LENGTH);
  }

  private static byte[] tag(String name) {
    return name.getBytes(StandardCharsets.US_ASCII);
  }

  /** Keeps the next samples. */
  public void append(float[] samples, int count) {
    for (int i = 0; i < count && out.isPresent(); i++) {
      block.putShort((short) Math.max(-32768, Math.min(32767, Math.round(32768 * samples[i]))));
      if (!block.hasRemaining()) {
        flush();
      }
    }
  }

  private void flush() {
    if (out.isEmpty()) {
      return;
    }
    try {
      out.get().write(block.array(), 0, block.position());
      written += block.position();
      block.clear();
      if (written > MOST_BYTES - BLOCK_BYTES) {
        close();
      }
    } catch (IOException e) {
      tell(e);
      close();
    }
  }

  private void tell(IOException e) {
    trouble =
        Optional.of(
            "The sound of this take cannot be kept any further in "
                + file
                + " ("
                + e.getMessage()
                + "); the notes still are, and the take goes on. Make room on the disk for the"
                + " next one.");
  }

  /** What went wrong, in one sentence; empty while all is well. */
  public Optional<String> trouble() {
    return trouble;
  }

  /** Writes what is left, fills in the lengths and lets go of the file. */
  @Override
  public void close() {
    if (out.isEmpty()) {
      return;
    }
    FileOutputStream closing = out.get();
    out = Optional.empty();
    try (closing) {
      if (trouble.isEmpty()) {
        closing.write(block.array(), 0, block.position());
      }
    } catch (IOException e) {
      tell(e);
    }
    try {
      mend(file);
    } catch (IOException e) {
      // The file can be read without: its head says "to the end".
      tell(e);
    }
  }

  /**
   * Fills in the lengths of a file whose writer did not come to it. A file that is none of ours is
   * left as it is.
   *
   * @throws IOException when the disk fails
   */
  public static void mend(Path file) throws IOException {
    try (RandomAccessFile wave = new RandomAccessFile(file.toFile(), "rw")) {
      long length = wave.length();
      if (length < HEAD || !unfinished(wave)) {
        return;
      }
      // Half a sample at the end is left out.
      long bytes = Math.min(MOST_BYTES, length - HEAD) / 2 * 2;
      size(wave, RIFF_SIZE_AT, HEAD - 8 + bytes);
      size(wave, DATA_SIZE_AT, bytes);
      wave.setLength(HEAD + bytes);
    }
  }

  private static boolean unfinished(RandomAccessFile wave) throws IOException {
    byte[] head = new byte[HEAD];
    wave.readFully(head);
    ByteBuffer read = ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN);
    return read.getInt(RIFF_SIZE_AT) == UNKNOWN_LENGTH
        && read.getInt(DATA_SIZE_AT) == UNKNOWN_LENGTH
        && new String(head, DATA_SIZE_AT - 4, 4, StandardCharsets.US_ASCII).equals("data");
  }

  private static void size(RandomAccessFile wave, int at, long bytes) throws IOException {
    wave.seek(at);
    wave.writeInt(Integer.reverseBytes((int) bytes));
  }
}
