package holdfast.backing.sound;

import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;

/** MIDI 1.0 channel messages, with their numbers checked once, here. */
public final class Messages {

  /** MIDI 1.0: the controller that ends all sound, releases included. */
  private static final int ALL_SOUND_OFF = 120;

  /** MIDI 1.0: channel volume. */
  private static final int CHANNEL_VOLUME = 7;

  /** MIDI 1.0: place between left and right. */
  private static final int PAN = 10;

  /** General MIDI 2: how much of the sound goes to the room's reverberation. */
  private static final int ROOM = 91;

  private Messages() {}

  /** A note begins. */
  public static ShortMessage noteOn(int channel, int pitch, int velocity) {
    return message(ShortMessage.NOTE_ON, channel, pitch, velocity);
  }

  /** A note is let go. */
  public static ShortMessage noteOff(int channel, int pitch) {
    return message(ShortMessage.NOTE_OFF, channel, pitch, 0);
  }

  /** The channel plays this instrument of General MIDI, 0 to 127. */
  public static ShortMessage program(int channel, int program) {
    return message(ShortMessage.PROGRAM_CHANGE, channel, program, 0);
  }

  /** How loud the channel is, 0 to 127. */
  public static ShortMessage channelVolume(int channel, int volume) {
    return message(ShortMessage.CONTROL_CHANGE, channel, CHANNEL_VOLUME, volume);
  }

  /** From where the channel is heard: 0 left, 64 the middle, 127 right. */
  public static ShortMessage pan(int channel, int place) {
    return message(ShortMessage.CONTROL_CHANGE, channel, PAN, place);
  }

  /** How much of the room is heard, 0 to 127. */
  public static ShortMessage room(int channel, int amount) {
    return message(ShortMessage.CONTROL_CHANGE, channel, ROOM, amount);
  }

  /** Silences the channel at once, releases included. */
  public static ShortMessage allSoundOff(int channel) {
    return message(ShortMessage.CONTROL_CHANGE, channel, ALL_SOUND_OFF, 0);
  }

  /** The same message on another channel. */
  public static ShortMessage onChannel(int channel, int command, int first, int second) {
    return message(command, channel, first, second);
  }

  private static ShortMessage message(int command, int channel, int first, int second) {
    try {
      return new ShortMessage(command, channel, first, second);
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }
}
