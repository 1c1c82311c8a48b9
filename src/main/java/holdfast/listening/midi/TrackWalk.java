package holdfast.listening.midi;

import holdfast.listening.midi.MidiChunks.TrackChunk;

/**
 * Walks through the events of one track, in order, and tells them to a visitor. Holds no events, so
 * that a file of any content costs no more than itself.
 */
final class TrackWalk {

  /** Who wants to know. */
  interface Visitor {

    /**
     * A channel message.
     *
     * @param tick from the start of the track
     * @param offset of the message in the file
     * @param status 0x80 to 0xEF
     */
    default void message(long tick, int offset, int status, int data1, int data2) {}

    /** A meta event; its content lies at {@code from} in the file's bytes. */
    default void meta(long tick, int offset, int type, int from, int length) {}

    /** A system exclusive message or an escape, whose content is not looked at. */
    default void exclusive(long tick, int offset) {}

    /** The track is over, at this tick. */
    default void end(long tick) {}
  }

  /** How a walk ended. */
  enum Ending {
    /** With the end-of-track event, or at the end of the chunk. */
    WHOLE,
    /** The file ends between two events of this track, which should go on. */
    CUT_BETWEEN_EVENTS,
    /** The file ends inside an event of this track. */
    CUT_WITHIN_AN_EVENT
  }

  static final int META = 0xFF;
  static final int END_OF_TRACK = 0x2F;

  private static final String MEND = "export the take again, or save it anew from another program";

  private final String file;
  private final byte[] bytes;

  TrackWalk(String file, byte[] bytes) {
    this.file = file;
    this.bytes = bytes;
  }

  /** Walks one track from its start. */
  Ending walk(TrackChunk track, Visitor visitor) {
    MidiBytes in = new MidiBytes(bytes, track.from(), track.to());
    long tick = 0;
    int running = 0;
    while (in.left() > 0) {
      int offset = in.at();
      try {
        int delta = in.variableLength();
        if (delta < 0) {
          throw wrong(track, offset, "a time is written with more than four bytes");
        }
        long now = tick + delta;
        int status = in.peek() >= 0x80 ? in.u8() : running;
        if (status == META) {
          int type = in.u8();
          int length = length(track, in);
          int from = in.skip(length);
          tick = now;
          if (type == END_OF_TRACK) {
            visitor.end(tick);
            return Ending.WHOLE;
          }
          visitor.meta(tick, offset, type, from, length);
        } else if (status == 0xF0 || status == 0xF7) {
          in.skip(length(track, in));
          tick = now;
          visitor.exclusive(tick, offset);
        } else if (status >= 0xF8) {
          // Clock and active sensing have no place in a file; some recorders let them slip in.
          tick = now;
        } else if (status >= 0x80 && status < 0xF0) {
          int data1 = data(track, in);
          int data2 = status < 0xC0 || status >= 0xE0 ? data(track, in) : 0;
          // System exclusive and meta events should end running status; writers that let it go on
          // are common and mean the last channel message, so it is kept.
          running = status;
          tick = now;
          visitor.message(tick, offset, status, data1, data2);
        } else if (status == 0) {
          throw wrong(track, offset, "there is data before any message");
        } else {
          throw wrong(
              track, offset, String.format("the message 0x%02X has no place in a file", status));
        }
      } catch (MidiBytes.Ended e) {
        if (!track.isCut()) {
          throw wrong(track, offset, "the event here goes on past the end of its track");
        }
        visitor.end(tick);
        return Ending.CUT_WITHIN_AN_EVENT;
      }
    }
    visitor.end(tick);
    return track.isCut() ? Ending.CUT_BETWEEN_EVENTS : Ending.WHOLE;
  }

  private int length(TrackChunk track, MidiBytes in) {
    int offset = in.at();
    int length = in.variableLength();
    if (length < 0) {
      throw wrong(track, offset, "a length is written with more than four bytes");
    }
    return length;
  }

  private int data(TrackChunk track, MidiBytes in) {
    int offset = in.at();
    int value = in.u8();
    if (value >= 0x80) {
      throw wrong(
          track, offset, String.format("0x%02X stands where a message's data should be", value));
    }
    return value;
  }

  private MidiFileException wrong(TrackChunk track, int offset, String problem) {
    return MidiFileException.at(file, "track " + track.number(), offset, problem, MEND);
  }
}
