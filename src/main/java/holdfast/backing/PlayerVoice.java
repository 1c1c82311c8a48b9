package holdfast.backing;

import holdfast.backing.sound.Messages;
import holdfast.backing.sound.SoundOut;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;

/**
 * Sounds a player's own keyboard through the backing's output, for keyboards that make no sound
 * themselves. What is heard is late by the output's buffer, so open that with a quick one: {@link
 * holdfast.backing.sound.SoundChoice#QUICK_BUFFER_MILLIS}.
 */
public final class PlayerVoice implements Receiver {

  /** A channel that the band does not use. */
  private static final int CHANNEL = 2;

  /** MIDI 1.0: the pedal; other controllers could move volume or place. */
  private static final int SUSTAIN_PEDAL = 64;

  private static final int ACOUSTIC_PIANO = 0;
  private static final int VOLUME = 110;

  private final SoundOut out;

  /** A piano on this output. */
  public PlayerVoice(SoundOut out) {
    this.out = out;
    out.send(Messages.program(CHANNEL, ACOUSTIC_PIANO), out.madeMicros());
    out.send(Messages.channelVolume(CHANNEL, VOLUME), out.madeMicros());
  }

  /** Sounds notes, pedals and bends at once; all else, and the message's own stamp, is ignored. */
  @Override
  public void send(MidiMessage message, long ignoredStamp) {
    if (message instanceof ShortMessage key && key.getStatus() < 0xF0) {
      switch (key.getCommand()) {
        case ShortMessage.NOTE_ON, ShortMessage.NOTE_OFF, ShortMessage.PITCH_BEND -> pass(key);
        case ShortMessage.CONTROL_CHANGE -> {
          if (key.getData1() == SUSTAIN_PEDAL) {
            pass(key);
          }
        }
        default -> {}
      }
    }
  }

  private void pass(ShortMessage key) {
    ShortMessage ours =
        Messages.onChannel(CHANNEL, key.getCommand(), key.getData1(), key.getData2());
    out.send(ours, out.madeMicros());
  }

  /** Nothing sounds on; the voice can be used again, as when a cable is back. */
  @Override
  public void close() {
    out.send(
        Messages.onChannel(CHANNEL, ShortMessage.CONTROL_CHANGE, SUSTAIN_PEDAL, 0),
        out.madeMicros());
    out.send(Messages.allSoundOff(CHANNEL), out.madeMicros());
  }
}
