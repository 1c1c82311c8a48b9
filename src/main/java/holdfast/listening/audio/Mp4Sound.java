package holdfast.listening.audio;

import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.logging.Logger;
import net.sourceforge.jaad.aac.Decoder;

/**
 * Reads AAC sound out of an MP4 file (ISO/IEC 14496-12 and -14). The decoder's own reader of boxes
 * is not used: it believes every count and length, so that a file of a kilobyte can make it ask for
 * gigabytes or turn on the spot. Here tables reach no further than their boxes, and all frames
 * together are no longer than the file.
 */
final class Mp4Sound {

  /** Of an entry that says how sound is coded, before the boxes in it; more in older files. */
  private static final int[] ENTRY_BYTES = {28, 44, 64};

  private static final int VERSION_AND_FLAGS = 4;

  // Tags of ISO/IEC 14496-1, 7.2.2.
  private static final int ES_DESCRIPTOR = 3;
  private static final int DECODER_CONFIG = 4;
  private static final int DECODER_SPECIFIC = 5;

  private static final float FULL_SCALE = 32_768;

  /** The decoder tells its doubts to the console unless it is asked not to. */
  private static final Logger TALK = Logger.getLogger("jaad");

  private final FileChannel in;
  private final SampleSink sink;
  private final int mostFrames;
  private float[][] block = new float[0][];
  private int frames;

  private Mp4Sound(FileChannel in, int mostFrames, SampleSink sink) {
    this.in = in;
    this.mostFrames = mostFrames;
    this.sink = sink;
  }

  /**
   * Reads the first sound in a file. One that breaks off is read as far as it goes.
   *
   * @throws IOException when there is none that can be read
   */
  static void read(Path file, int mostFrames, SampleSink sink) throws IOException {
    TALK.setUseParentHandlers(false);
    try (FileChannel in = FileChannel.open(file)) {
      new Mp4Sound(in, mostFrames, sink).read();
    } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException e) {
      throw new IOException("its description breaks off", e);
    }
  }

  private void read() throws IOException {
    ByteBuffer tables = tables(Mp4Boxes.outermost(in, "moov"));
    Decoder decoder = Decoder.create(codedHow(Mp4Boxes.within(tables, "stsd")));
    ByteBuffer runs = table(tables, "stsc");
    ByteBuffer sizes = table(tables, "stsz");
    boolean isLong = Mp4Boxes.all(tables, "stco").isEmpty();
    ByteBuffer chunks = table(tables, isLong ? "co64" : "stco");
    int size = sizes.getInt();
    int count = sizes.getInt();
    int chunkCount = chunks.getInt();
    int runCount = runs.getInt();
    long left = in.size();
    int frame = 0;
    int inChunk = 0;
    int nextRun = 0;
    for (int chunk = 1; chunk <= chunkCount && frame < count; chunk++) {
      while (nextRun < runCount && runs.getInt(runs.position()) <= chunk) {
        runs.getInt();
        inChunk = runs.getInt();
        runs.getInt();
        nextRun++;
      }
      long at = isLong ? chunks.getLong() : Integer.toUnsignedLong(chunks.getInt());
      for (int i = 0; i < inChunk && frame < count; i++) {
        int length = size == 0 ? sizes.getInt() : size;
        left -= length;
        if (length <= 0 || at < 0 || at > in.size() - length || left < 0) {
          end();
          return;
        }
        decode(decoder, Mp4Boxes.bytes(in, at, length).array());
        at += length;
        frame++;
      }
    }
    end();
  }

  private void end() throws IOException {
    if (frames == 0) {
      throw new IOException("there is no sound in it");
    }
  }

  /** The tables of the first track that is sound ("stbl"). */
  private static ByteBuffer tables(ByteBuffer movie) throws IOException {
    for (ByteBuffer track : Mp4Boxes.all(movie, "trak")) {
      ByteBuffer media = Mp4Boxes.within(track, "mdia");
      byte[] kind = new byte[4];
      Mp4Boxes.within(media, "hdlr").get(VERSION_AND_FLAGS + 4, kind);
      if (new String(kind, StandardCharsets.ISO_8859_1).equals("soun")) {
        return Mp4Boxes.within(Mp4Boxes.within(media, "minf"), "stbl");
      }
    }
    throw new IOException("there is no sound in it");
  }

  private static ByteBuffer table(ByteBuffer tables, String kind) throws IOException {
    ByteBuffer table = Mp4Boxes.within(tables, kind);
    return table.position(VERSION_AND_FLAGS);
  }

  /** What the decoder must know before the first frame (AudioSpecificConfig). */
  private static byte[] codedHow(ByteBuffer description) throws IOException {
    ByteBuffer entries = description.position(VERSION_AND_FLAGS + Integer.BYTES).slice();
    ByteBuffer entry = Mp4Boxes.within(entries, "mp4a");
    int version = Math.min(entry.getShort(8), ENTRY_BYTES.length - 1);
    ByteBuffer boxes = entry.position(ENTRY_BYTES[version]).slice();
    // Films keep it one box deeper.
    List<ByteBuffer> deeper = Mp4Boxes.all(boxes, "wave");
    ByteBuffer described = Mp4Boxes.within(deeper.isEmpty() ? boxes : deeper.get(0), "esds");
    ByteBuffer stream = descriptor(described.position(VERSION_AND_FLAGS), ES_DESCRIPTOR);
    stream.getShort();
    int flags = stream.get();
    stream.position(stream.position() + ((flags & 0x80) == 0 ? 0 : Short.BYTES));
    stream.position(stream.position() + ((flags & 0x40) == 0 ? 0 : 1 + (stream.get() & 0xff)));
    stream.position(stream.position() + ((flags & 0x20) == 0 ? 0 : Short.BYTES));
    ByteBuffer decoder = descriptor(stream, DECODER_CONFIG);
    // Kind, kind of stream, buffer and two bit rates.
    ByteBuffer specific = descriptor(decoder.position(13), DECODER_SPECIFIC);
    byte[] bytes = new byte[specific.remaining()];
    specific.get(bytes);
    return bytes;
  }

  /** A descriptor's contents: its length is written in as many bytes as it needs. */
  private static ByteBuffer descriptor(ByteBuffer at, int tag) throws IOException {
    if (at.get() != tag) {
      throw new IOException("it does not say how its sound is coded");
    }
    int length = 0;
    byte part;
    do {
      part = at.get();
      length = length << 7 | (part & 0x7f);
    } while (part < 0);
    return at.slice(at.position(), length);
  }

  /** One frame; where a frame is broken, silence of its length keeps the time. */
  private void decode(Decoder decoder, byte[] frame) throws IOException {
    int[] rate = {0};
    int[] length = {0};
    try {
      decoder.decodeFrame(
          frame,
          (channels, samples, perSecond) -> {
            length[0] = channels.stream().mapToInt(c -> c.length).min().orElse(0);
            rate[0] = (int) ((long) perSecond * length[0] / Math.max(1, samples));
            keep(channels, length[0]);
          });
    } catch (RuntimeException broken) {
      length[0] = 0;
    }
    if (length[0] > 0 && frames == 0) {
      sink.begin(rate[0], block.length);
    }
    if (length[0] == 0 && frames > 0) {
      length[0] = block[0].length;
      for (float[] channel : block) {
        Arrays.fill(channel, 0);
      }
    }
    if (length[0] > 0) {
      if (frames > mostFrames - length[0]) {
        throw new IOException("longer than can be read at once; cut it into shorter takes");
      }
      sink.take(block, length[0]);
      frames += length[0];
    }
  }

  private void keep(List<float[]> channels, int length) {
    if (frames == 0) {
      block = new float[Math.min(2, channels.size())][length];
    } else if (block[0].length < length) {
      block = new float[block.length][length];
    }
    for (int c = 0; c < block.length; c++) {
      float[] samples = channels.get(Math.min(c, channels.size() - 1));
      for (int i = 0; i < length; i++) {
        block[c][i] = Float.isFinite(samples[i]) ? samples[i] / FULL_SCALE : 0;
      }
    }
  }
}
