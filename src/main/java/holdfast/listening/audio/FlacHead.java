package holdfast.listening.audio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;

/**
 * A FLAC file (RFC 9639) without the covers, tags and tables in front of its sound. They say
 * nothing about what was played, and a decoder that believes their lengths can be made to ask for
 * gigabytes by a file of a few bytes.
 */
final class FlacHead {

  private static final int LAST = 0x80;
  private static final int STREAM_INFO = 0;
  private static final int PADDING = 1;
  private static final int STREAM_INFO_BYTES = 34;

  private FlacHead() {}

  /** The marker, the one block that describes the sound, and the sound. */
  static InputStream bare(InputStream file) throws IOException {
    DataInputStream in = new DataInputStream(file);
    byte[] marker = in.readNBytes(4);
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    head.write(marker);
    if (!new String(marker, StandardCharsets.ISO_8859_1).equals("fLaC")) {
      throw new IOException("it does not begin as FLAC does");
    }
    boolean last = false;
    boolean described = false;
    while (!last) {
      int kind = in.readUnsignedByte();
      int length = in.readUnsignedByte() << 16 | in.readUnsignedShort();
      last = (kind & LAST) != 0;
      if ((kind & ~LAST) == STREAM_INFO && length == STREAM_INFO_BYTES && !described) {
        head.write(new byte[] {STREAM_INFO, 0, 0, STREAM_INFO_BYTES});
        head.write(in.readNBytes(length));
        described = true;
      } else {
        skip(in, length);
      }
    }
    if (!described) {
      throw new IOException("it does not say what its sound is like");
    }
    // The decoder looks for one more block even behind the last: an empty one.
    head.write(new byte[] {(byte) (LAST | PADDING), 0, 0, 0});
    return new SequenceInputStream(new ByteArrayInputStream(head.toByteArray()), in);
  }

  private static void skip(InputStream in, int length) throws IOException {
    try {
      in.skipNBytes(length);
    } catch (EOFException e) {
      throw new EOFException("it breaks off before its sound begins");
    }
  }
}
