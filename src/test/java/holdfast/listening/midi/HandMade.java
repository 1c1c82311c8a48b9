package holdfast.listening.midi;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** Standard MIDI Files laid byte by byte, by the rules of the standard and none of our code. */
final class HandMade {

  private HandMade() {}

  static byte[] file(int format, int division, byte[]... tracks) {
    return file(format, tracks.length, division, tracks);
  }

  static byte[] file(int format, int declaredTracks, int division, byte[]... tracks) {
    byte[] header =
        bytes(
            'M',
            'T',
            'h',
            'd',
            0,
            0,
            0,
            6,
            0,
            format,
            declaredTracks >> 8,
            declaredTracks & 0xFF,
            (division >> 8) & 0xFF,
            division & 0xFF);
    return join(header, join(tracks));
  }

  /** A track of these events, with its end mark. */
  static byte[] track(byte[]... events) {
    byte[] content = join(join(events), bytes(0, 0xFF, 0x2F, 0));
    return chunk("MTrk", content.length, content);
  }

  /** A chunk that may lie about its length. */
  static byte[] chunk(String tag, long claimedLength, byte[] content) {
    return join(
        tag.getBytes(StandardCharsets.ISO_8859_1),
        bytes(
            (int) (claimedLength >> 24) & 0xFF,
            (int) (claimedLength >> 16) & 0xFF,
            (int) (claimedLength >> 8) & 0xFF,
            (int) claimedLength & 0xFF),
        content);
  }

  static byte[] on(int delta, int channel, int key, int velocity) {
    return join(time(delta), bytes(0x90 | (channel - 1), key, velocity));
  }

  static byte[] off(int delta, int channel, int key) {
    return join(time(delta), bytes(0x80 | (channel - 1), key, 64));
  }

  static byte[] control(int delta, int channel, int controller, int value) {
    return join(time(delta), bytes(0xB0 | (channel - 1), controller, value));
  }

  static byte[] bend(int delta, int channel, int value) {
    int wheel = value + 8192;
    return join(time(delta), bytes(0xE0 | (channel - 1), wheel & 0x7F, wheel >> 7));
  }

  static byte[] program(int channel, int program) {
    return bytes(0, 0xC0 | (channel - 1), program);
  }

  static byte[] tempo(int delta, int microsPerQuarter) {
    return join(
        time(delta),
        bytes(
            0xFF,
            0x51,
            3,
            microsPerQuarter >> 16,
            (microsPerQuarter >> 8) & 0xFF,
            microsPerQuarter & 0xFF));
  }

  static byte[] metre(int delta, int beats, int power) {
    return join(time(delta), bytes(0xFF, 0x58, 4, beats, power, 24, 8));
  }

  static byte[] text(int delta, int type, String text) {
    byte[] content = text.getBytes(StandardCharsets.UTF_8);
    return join(time(delta), bytes(0xFF, type), time(content.length), content);
  }

  static byte[] name(String text) {
    return text(0, 3, text);
  }

  static byte[] marker(int delta, String text) {
    return text(delta, 6, text);
  }

  /** A variable-length quantity, seven bits a byte, highest first. */
  static byte[] time(int value) {
    int count = 1;
    while (value >> (7 * count) != 0) {
      count++;
    }
    byte[] bytes = new byte[count];
    for (int i = 0; i < count; i++) {
      int seven = (value >> (7 * (count - 1 - i))) & 0x7F;
      bytes[i] = (byte) (i < count - 1 ? seven | 0x80 : seven);
    }
    return bytes;
  }

  static byte[] bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }
}
