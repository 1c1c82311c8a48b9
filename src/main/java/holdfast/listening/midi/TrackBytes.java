package holdfast.listening.midi;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The events of one track on their way to a file. They may come in any order; at one tick, ends
 * come before beginnings.
 */
final class TrackBytes {

  /** What comes first at one tick. */
  enum Turn {
    NOTE_OFF,
    SETTING,
    NOTE_ON
  }

  private static final class Event {
    final long tick;
    final Turn turn;
    final byte[] bytes;

    Event(long tick, Turn turn, byte... bytes) {
      this.tick = tick;
      this.turn = turn;
      this.bytes = bytes;
    }

    long tick() {
      return tick;
    }

    Turn turn() {
      return turn;
    }
  }

  private final List<Event> events = new ArrayList<>();

  void meta(long tick, int type, byte... content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(TrackWalk.META);
    out.write(type);
    out.writeBytes(variableLength(content.length));
    out.writeBytes(content);
    events.add(new Event(tick, Turn.SETTING, out.toByteArray()));
  }

  void text(long tick, int type, String text) {
    meta(tick, type, MidiText.plain(text).getBytes(StandardCharsets.UTF_8));
  }

  /** A channel message of two data bytes; {@code status} carries the channel. */
  void message(long tick, Turn turn, int status, int data1, int data2) {
    events.add(new Event(tick, turn, (byte) status, (byte) data1, (byte) data2));
  }

  void program(int channel, int program) {
    byte[] bytes = {(byte) (ChannelNotes.PROGRAM | (channel - 1)), (byte) program};
    events.add(new Event(0, Turn.SETTING, bytes));
  }

  /** The tick of the last event; 0 without any. */
  long lastTick() {
    return events.stream().mapToLong(Event::tick).max().orElse(0);
  }

  /** The whole chunk, with its end mark at this tick. */
  byte[] chunk(long endTick) {
    ByteArrayOutputStream content = new ByteArrayOutputStream();
    events.sort(Comparator.comparingLong(Event::tick).thenComparing(Event::turn));
    long now = 0;
    for (Event event : events) {
      content.writeBytes(variableLength(event.tick - now));
      content.writeBytes(event.bytes);
      now = event.tick;
    }
    content.writeBytes(variableLength(endTick - now));
    content.writeBytes(new byte[] {(byte) TrackWalk.META, TrackWalk.END_OF_TRACK, 0});
    return chunk("MTrk", content.toByteArray());
  }

  static byte[] chunk(String tag, byte[] content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(tag.getBytes(StandardCharsets.US_ASCII));
    for (int shift = 24; shift >= 0; shift -= 8) {
      out.write(content.length >> shift);
    }
    out.writeBytes(content);
    return out.toByteArray();
  }

  /**
   * A number in groups of seven bits, highest first, all but the last with the top bit set
   * (Standard MIDI Files 1.0, "variable-length quantity").
   *
   * @param value 0 to 0x0FFFFFFF
   */
  static byte[] variableLength(long value) {
    if (value < 0 || value > 0x0FFFFFFF) {
      throw new IllegalArgumentException("a MIDI file cannot count " + value + " ticks or bytes");
    }
    int groups = 1;
    while (value >> (7 * groups) != 0) {
      groups++;
    }
    byte[] bytes = new byte[groups];
    for (int i = 0; i < groups; i++) {
      int seven = (int) (value >> (7 * (groups - 1 - i))) & 0x7F;
      bytes[i] = (byte) (i < groups - 1 ? seven | 0x80 : seven);
    }
    return bytes;
  }
}
