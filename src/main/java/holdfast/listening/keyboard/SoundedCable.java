package holdfast.listening.keyboard;

import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;

/**
 * A cable that a voice listens to as well. When it is let go of, the voice is closed, so that no
 * note hangs; connected again, the voice sounds again.
 */
record SoundedCable(Cable cable, Receiver voice) implements Cable {

  @Override
  public String name() {
    return cable.name();
  }

  @Override
  public boolean isPlugged() {
    return cable.isPlugged();
  }

  @Override
  public boolean isConnected() {
    return cable.isConnected();
  }

  @Override
  public boolean connect(Receiver ear) {
    return cable.connect(new Both(ear, voice));
  }

  @Override
  public void disconnect() {
    cable.disconnect();
    voice.close();
  }

  /**
   * The ear first, since it stamps and goes; then the voice. Closing it leaves both as they are.
   */
  private record Both(Receiver ear, Receiver voice) implements Receiver {
    @Override
    public void send(MidiMessage message, long stamp) {
      ear.send(message, stamp);
      voice.send(message, stamp);
    }

    @Override
    public void close() {
      // Each belongs to somebody else.
    }
  }
}
