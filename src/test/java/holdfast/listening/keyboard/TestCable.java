package holdfast.listening.keyboard;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Transmitter;
import javax.sound.midi.spi.MidiDeviceProvider;

/**
 * A MIDI input that the JDK finds as it finds real ones, and that a test can play on, pull out and
 * plug in again.
 */
public final class TestCable extends MidiDeviceProvider {

  /** What the system calls it, with the port's number behind it as Linux writes it. */
  static final String SYSTEM_NAME = "Test Keys [hw:9,0,0]";

  public static final String NAME = "Test Keys";

  private static final MidiDevice.Info INFO = new PortInfo();
  private static final AtomicBoolean PLUGGED = new AtomicBoolean();
  private static final List<Port> OPEN = new CopyOnWriteArrayList<>();

  @Override
  public MidiDevice.Info[] getDeviceInfo() {
    return PLUGGED.get() ? new MidiDevice.Info[] {INFO} : new MidiDevice.Info[0];
  }

  @Override
  public MidiDevice getDevice(MidiDevice.Info info) {
    if (!INFO.equals(info)) {
      throw new IllegalArgumentException("not ours: " + info);
    }
    return new Port();
  }

  /** Plugs the cable in. */
  public static void plugIn() {
    PLUGGED.set(true);
  }

  /** Pulls it out: the device is gone from the list and says no more. */
  public static void pullOut() {
    PLUGGED.set(false);
    OPEN.forEach(Port::close);
  }

  /** Whether somebody has opened it. */
  public static boolean isListenedTo() {
    return !OPEN.isEmpty();
  }

  /** A message comes over the cable, as {@code ShortMessage} has it. */
  public static void send(int status, int data1, int data2) {
    try {
      send(new ShortMessage(status, data1, data2));
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** A message of any kind comes over the cable. */
  public static void send(MidiMessage message) {
    OPEN.forEach(port -> port.transmit(message));
  }

  private static final class PortInfo extends MidiDevice.Info {
    PortInfo() {
      super(SYSTEM_NAME, "nobody", "a keyboard for tests", "1");
    }
  }

  private static final class Port implements MidiDevice {
    private final List<Receiver> receivers = new CopyOnWriteArrayList<>();
    private volatile boolean open;

    void transmit(MidiMessage message) {
      // The stamp is a wall clock's, far from nanoTime, as on Linux.
      receivers.forEach(r -> r.send(message, 1_700_000_000_000_000L));
    }

    @Override
    public MidiDevice.Info getDeviceInfo() {
      return INFO;
    }

    @Override
    public void open() throws MidiUnavailableException {
      if (!PLUGGED.get()) {
        throw new MidiUnavailableException("not plugged in");
      }
      open = true;
      OPEN.add(this);
    }

    @Override
    public void close() {
      open = false;
      OPEN.remove(this);
    }

    @Override
    public boolean isOpen() {
      return open;
    }

    @Override
    public long getMicrosecondPosition() {
      return -1;
    }

    @Override
    public int getMaxReceivers() {
      return 0;
    }

    @Override
    public int getMaxTransmitters() {
      return -1;
    }

    @Override
    public Receiver getReceiver() throws MidiUnavailableException {
      throw new MidiUnavailableException("an input only");
    }

    @Override
    public List<Receiver> getReceivers() {
      return List.of();
    }

    @Override
    public Transmitter getTransmitter() {
      return new Transmitter() {
        private Receiver receiver;

        @Override
        public void setReceiver(Receiver other) {
          receiver = other;
          receivers.add(other);
        }

        @Override
        public Receiver getReceiver() {
          return receiver;
        }

        @Override
        public void close() {
          receivers.remove(receiver);
        }
      };
    }

    @Override
    public List<Transmitter> getTransmitters() {
      return List.of();
    }
  }
}
