package holdfast.listening.midi;

import java.nio.charset.StandardCharsets;

/**
 * A stretch of a file that is read forward, and that knows where it is. Reading past its end is an
 * {@link Ended}, which says where the thing that is missing its end began; nothing is ever
 * allocated for a length that the file only claims.
 */
final class MidiBytes {

  /** The stretch ended inside something. No stack trace: it is caught where the track is known. */
  static final class Ended extends RuntimeException {

    private static final long serialVersionUID = 1L;

    Ended() {
      super("the stretch ended", null, false, false);
    }
  }

  private final byte[] bytes;
  private final int to;
  private int at;

  MidiBytes(byte[] bytes, int from, int to) {
    this.bytes = bytes;
    this.at = from;
    this.to = to;
  }

  int at() {
    return at;
  }

  int left() {
    return to - at;
  }

  int u8() {
    if (at >= to) {
      throw new Ended();
    }
    return bytes[at++] & 0xFF;
  }

  /** The next byte, which stays unread. */
  int peek() {
    if (at >= to) {
      throw new Ended();
    }
    return bytes[at] & 0xFF;
  }

  int u16() {
    return (u8() << 8) | u8();
  }

  /** Four bytes, highest first. */
  long u32() {
    return ((long) u16() << 16) | u16();
  }

  /** Four bytes, lowest first, as RIFF counts. */
  long u32LowestFirst() {
    long value = 0;
    for (int shift = 0; shift < 32; shift += 8) {
      value |= (long) u8() << shift;
    }
    return value;
  }

  /** A variable-length quantity, at most four bytes and 0x0FFFFFFF; −1 where it is longer. */
  int variableLength() {
    int value = 0;
    for (int i = 0; i < 4; i++) {
      int b = u8();
      value = (value << 7) | (b & 0x7F);
      if (b < 0x80) {
        return value;
      }
    }
    return -1;
  }

  /** Passes over so many bytes and says where they began. */
  int skip(long count) {
    if (count > left()) {
      throw new Ended();
    }
    int from = at;
    at += (int) count;
    return from;
  }

  /** Four letters that name a chunk. */
  String tag() {
    int from = skip(4);
    return new String(bytes, from, 4, StandardCharsets.ISO_8859_1);
  }
}
