package holdfast.listening.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * Whether the boxes of an MP4 file (ISO/IEC 14496-12, 4.2) lie within it. The decoder believes the
 * length a box gives itself: told to pass over more than two gigabytes, it would turn on the spot
 * for ever. Nor does it know the length of nought that stands for "to the end of the file".
 */
final class Mp4Boxes {

  private static final int HEAD_BYTES = 8;
  private static final int LONG_HEAD_BYTES = 16;

  /** A length that stands behind the name, in eight bytes. */
  private static final long LONG_FORM = 1;

  private Mp4Boxes() {}

  /**
   * Looks at the heads of the outermost boxes. Sound that breaks off behind its description passes:
   * what is there can be heard.
   *
   * @throws IOException when a box says that it is shorter than its head or longer than the file
   */
  static void check(Path file) throws IOException {
    try (FileChannel in = FileChannel.open(file)) {
      long end = in.size();
      long at = 0;
      boolean described = false;
      while (at < end) {
        ByteBuffer head = head(in, at);
        long length = Integer.toUnsignedLong(head.getInt());
        byte[] name = new byte[4];
        head.get(name);
        String kind = new String(name, StandardCharsets.ISO_8859_1);
        described |= kind.equals("moov");
        long least = HEAD_BYTES;
        if (length == LONG_FORM) {
          length = head.getLong();
          least = LONG_HEAD_BYTES;
        }
        if (length < least) {
          throw new IOException("at byte " + at + " stands a length that cannot be");
        }
        boolean heardAsFarAsItGoes = described && kind.equals("mdat");
        if (length > end - at && !heardAsFarAsItGoes) {
          throw new IOException("it breaks off before its end");
        }
        at += Math.min(length, end - at);
      }
    }
  }

  /** Zeros stand for what lies behind the end of the file. */
  private static ByteBuffer head(FileChannel in, long at) throws IOException {
    ByteBuffer head = ByteBuffer.allocate(LONG_HEAD_BYTES);
    for (int got = 0; got >= 0 && head.hasRemaining(); ) {
      got = in.read(head, at + head.position());
    }
    return head.clear();
  }
}
