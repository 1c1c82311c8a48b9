package holdfast.listening.keyboard;

import java.util.Optional;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The cable of a real MIDI input. */
final class DeviceCable implements Cable {

  private static final Logger LOG = LoggerFactory.getLogger(DeviceCable.class);

  private final Keyboard keyboard;
  private Optional<MidiDevice> device = Optional.empty();

  DeviceCable(Keyboard keyboard) {
    this.keyboard = keyboard;
  }

  @Override
  public String name() {
    return keyboard.name();
  }

  @Override
  public boolean isPlugged() {
    return Keyboard.all().contains(keyboard);
  }

  @Override
  public boolean isConnected() {
    return device.map(MidiDevice::isOpen).orElse(false);
  }

  @Override
  public boolean connect(Receiver receiver) {
    Optional<MidiDevice> found = keyboard.device();
    if (found.isEmpty()) {
      return false;
    }
    MidiDevice opened = found.get();
    try {
      opened.open();
      opened.getTransmitter().setReceiver(receiver);
      device = found;
      return true;
    } catch (MidiUnavailableException | IllegalStateException busy) {
      LOG.info("{} cannot be opened: {}", name(), busy.toString());
      opened.close();
      return false;
    }
  }

  @Override
  public void disconnect() {
    device.ifPresent(MidiDevice::close);
    device = Optional.empty();
  }
}
