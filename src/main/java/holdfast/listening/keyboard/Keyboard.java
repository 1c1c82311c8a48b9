package holdfast.listening.keyboard;

import holdfast.listening.Capture;
import holdfast.listening.NoteSource;
import holdfast.mistake.UserMistake;
import holdfast.time.TakeClock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Sequencer;
import javax.sound.midi.Synthesizer;

/**
 * A MIDI input that can be listened to: a keyboard, a wind controller, another program's output.
 *
 * @param name what the system calls it
 */
public record Keyboard(String name) implements NoteSource {

  /** All inputs that are plugged in now, in the system's order. */
  public static List<Keyboard> all() {
    List<Keyboard> found = new ArrayList<>();
    for (MidiDevice.Info info : MidiSystem.getMidiDeviceInfo()) {
      if (input(info).isPresent()) {
        found.add(new Keyboard(plainName(info)));
      }
    }
    return List.copyOf(found);
  }

  /**
   * The input whose name holds the given words, whatever their case.
   *
   * @throws UserMistake when none does, naming those that are there
   */
  public static Keyboard named(String words) {
    String wanted = words.strip().toLowerCase(Locale.ROOT);
    List<Keyboard> all = all();
    return all.stream()
        .filter(k -> k.name().toLowerCase(Locale.ROOT).contains(wanted))
        .findFirst()
        .orElseThrow(
            () ->
                new UserMistake(
                    all.isEmpty()
                        ? "there is no MIDI input \""
                            + words
                            + "\", nor any other; plug one in, or let the demo student play"
                        : "there is no MIDI input \""
                            + words
                            + "\"; there is: "
                            + String.join(", ", all.stream().map(Keyboard::name).toList())));
  }

  @Override
  public Capture open(TakeClock clock) {
    return open(clock, new DeviceCable(this));
  }

  /** Listens through a cable of this keyboard's. */
  Capture open(TakeClock clock, Cable cable) {
    KeyboardCapture capture = new KeyboardCapture(cable, clock);
    if (!capture.isListening()) {
      capture.close();
      throw new UserMistake(
          "the MIDI input \""
              + name
              + "\" cannot be opened; close other programs that use it, or plug it in again");
    }
    return capture;
  }

  /** Opens the device itself, where it is plugged in and free. */
  Optional<MidiDevice> device() {
    for (MidiDevice.Info info : MidiSystem.getMidiDeviceInfo()) {
      if (plainName(info).equals(name)) {
        Optional<MidiDevice> device = input(info);
        if (device.isPresent()) {
          return device;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<MidiDevice> input(MidiDevice.Info info) {
    try {
      MidiDevice device = MidiSystem.getMidiDevice(info);
      boolean gives = device.getMaxTransmitters() != 0;
      boolean ours = device instanceof Sequencer || device instanceof Synthesizer;
      return gives && !ours ? Optional.of(device) : Optional.empty();
    } catch (MidiUnavailableException | IllegalArgumentException gone) {
      return Optional.empty();
    }
  }

  /** Linux puts the port in brackets behind the name ("Keys [hw:1,0,0]"); people need the name. */
  private static String plainName(MidiDevice.Info info) {
    String name = info.getName().replaceAll("\\s*\\[hw:[^]]*]\\s*$", "").strip();
    String described = info.getDescription() == null ? "" : info.getDescription().strip();
    return name.isEmpty() ? described : name;
  }
}
