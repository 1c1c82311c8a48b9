package holdfast.listening.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The boxes of an MP4 file (ISO/IEC 14496-12, 4.2). What a box says of its length is believed only
 * as far as the box around it reaches.
 */
final class Mp4Boxes {

  private static final int HEAD_BYTES = 8;
  private static final int LONG_HEAD_BYTES = 16;

  /** A length that stands for "as far as there is something". */
  private static final long TO_THE_END = 0;

  /** A length that stands behind the name, in eight bytes. */
  private static final long LONG_FORM = 1;

  /** Two and a half hours are described in less than 10 MB. */
  private static final int MOST_DESCRIPTION_BYTES = 1 << 26;

  private Mp4Boxes() {}

  /**
   * The contents of one of the outermost boxes.
   *
   * @throws IOException when there is none, or a box is longer than the file
   */
  static ByteBuffer outermost(FileChannel in, String kind) throws IOException {
    long end = in.size();
    for (long at = 0; at < end; ) {
      ByteBuffer head = bytes(in, at, (int) Math.min(LONG_HEAD_BYTES, end - at));
      if (head.remaining() < HEAD_BYTES) {
        throw new IOException("it breaks off before its end");
      }
      long length = Integer.toUnsignedLong(head.getInt());
      String name = name(head);
      int headBytes = HEAD_BYTES;
      if (length == LONG_FORM && head.remaining() == Long.BYTES) {
        length = head.getLong();
        headBytes = LONG_HEAD_BYTES;
      } else if (length == TO_THE_END) {
        length = end - at;
      }
      if (length < headBytes) {
        throw new IOException("at byte " + at + " stands a length that cannot be");
      }
      if (length > end - at) {
        throw new IOException("it breaks off before its end");
      }
      if (name.equals(kind)) {
        if (length > MOST_DESCRIPTION_BYTES) {
          throw new IOException("what describes its sound is " + length + " bytes long");
        }
        return bytes(in, at + headBytes, (int) length - headBytes);
      }
      at += length;
    }
    throw new IOException("what describes its sound is missing; it may be cut off");
  }

  /**
   * The contents of the first box of this kind right within another.
   *
   * @throws IOException when there is none
   */
  static ByteBuffer within(ByteBuffer box, String kind) throws IOException {
    List<ByteBuffer> found = all(box, kind);
    if (found.isEmpty()) {
      throw new IOException("it has no box \"" + kind + "\" where one belongs");
    }
    return found.get(0);
  }

  /** The contents of all boxes of this kind right within another. */
  static List<ByteBuffer> all(ByteBuffer box, String kind) throws IOException {
    List<ByteBuffer> found = new ArrayList<>();
    ByteBuffer rest = box.slice();
    while (rest.remaining() >= HEAD_BYTES) {
      int start = rest.position();
      long length = Integer.toUnsignedLong(rest.getInt());
      String name = name(rest);
      if (length == TO_THE_END) {
        length = (long) rest.limit() - start;
      }
      if (length < HEAD_BYTES || length > rest.limit() - start) {
        throw new IOException("its box \"" + name + "\" has a length that cannot be");
      }
      if (name.equals(kind)) {
        found.add(rest.slice(rest.position(), (int) length - HEAD_BYTES));
      }
      rest.position(start + (int) length);
    }
    return found;
  }

  /** Bytes of a file; fewer where it ends. */
  static ByteBuffer bytes(FileChannel in, long from, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length);
    for (int got = 0; got >= 0 && bytes.hasRemaining(); ) {
      got = in.read(bytes, from + bytes.position());
    }
    return bytes.flip();
  }

  private static String name(ByteBuffer at) {
    byte[] name = new byte[4];
    at.get(name);
    return new String(name, StandardCharsets.ISO_8859_1);
  }
}
