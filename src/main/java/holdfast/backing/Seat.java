package holdfast.backing;

import holdfast.backing.sound.Messages;
import java.util.List;
import javax.sound.midi.ShortMessage;

/**
 * Where a part sits in the band: its MIDI channel, its instrument, how loud and from where it is
 * heard.
 *
 * @param part the part
 * @param channel MIDI channel, 0 to 15; 9 is General MIDI's drums
 * @param program instrument of General MIDI, 0 to 127
 * @param volume 0 to 127
 * @param pan 0 left, 64 middle, 127 right
 * @param room how much of the room is heard, 0 to 127
 */
public record Seat(Part part, int channel, int program, int volume, int pan, int room) {

  private static final int ACOUSTIC_PIANO = 0;
  private static final int ELECTRIC_PIANO = 4;
  private static final int STRINGS = 48;
  private static final int ACOUSTIC_BASS = 32;
  private static final int CELLO = 42;
  private static final int FLUTE = 73;

  /**
   * The band for a feel, a seat for each part. The built-in bank was measured: its piano falls by
   * 10 dB a second, so that a whole note at a slow tempo is gone before the next; its electric
   * piano rings for four seconds and is 9 dB louder. The levels make both alike, and the time
   * softer. The flute of a line does not fall off and so is heard over either, 3 dB below the band
   * as a whole.
   */
  public static List<Seat> band(Feel feel) {
    Seat keys =
        switch (feel) {
          case PLAIN, BALLAD, EVEN -> new Seat(Part.CHORDS, 0, ELECTRIC_PIANO, 70, 54, 40);
          case SWING -> new Seat(Part.CHORDS, 0, ACOUSTIC_PIANO, 104, 54, 40);
          case DRONE -> new Seat(Part.CHORDS, 0, STRINGS, 84, 54, 50);
        };
    Seat low =
        feel == Feel.DRONE
            ? new Seat(Part.BASS, 1, CELLO, 70, 64, 30)
            : new Seat(Part.BASS, 1, ACOUSTIC_BASS, 96, 64, 16);
    return List.of(
        keys,
        low,
        new Seat(Part.TIME, 9, 0, 104, 74, 24),
        new Seat(Part.LINE, 3, FLUTE, 92, 70, 40));
  }

  /** The seat of one part. */
  static Seat of(Part part, Feel feel) {
    return band(feel).stream().filter(seat -> seat.part() == part).findFirst().orElseThrow();
  }

  /** The message that begins a note of this seat's. */
  static ShortMessage begin(Seat seat, BackingEvent event) {
    return Messages.noteOn(seat.channel(), event.pitch(), event.velocity());
  }

  /** The message that ends it. */
  static ShortMessage end(Seat seat, BackingEvent event) {
    return Messages.noteOff(seat.channel(), event.pitch());
  }

  /** The messages that seat it. */
  public List<ShortMessage> messages() {
    return List.of(
        Messages.program(channel, program),
        Messages.channelVolume(channel, volume),
        Messages.pan(channel, pan),
        Messages.room(channel, room));
  }
}
