package holdfast.listening.microphone;

import holdfast.listening.NoteSource;
import holdfast.time.TakeClock;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.sound.sampled.TargetDataLine;

/**
 * A microphone to sing or play into.
 *
 * @param name the device's plain name, or part of it; empty for the system's own choice
 * @param expected what is known beforehand
 * @param backing what sounds in the room beside the player, to be taken out; empty where nothing
 *     does
 * @param soundFile where what it hears is kept, if anywhere
 */
public record Microphone(
    String name, Expected expected, Optional<KnownSound> backing, Optional<Path> soundFile)
    implements NoteSource {

  /** A microphone of which nothing is known. */
  public static Microphone named(String name) {
    return new Microphone(name, Expected.ANYONE, Optional.empty(), Optional.empty());
  }

  /** The plain names of all devices that can be recorded from, the system's own choice first. */
  public static List<String> names() {
    return List.copyOf(Devices.all().keySet());
  }

  /** The same, with this known beforehand. */
  public Microphone expecting(Expected known) {
    return new Microphone(name, known, backing, soundFile);
  }

  /** The same, in a room where this sounds too. */
  public Microphone beside(KnownSound sound) {
    return new Microphone(name, expected, Optional.of(sound), soundFile);
  }

  @Override
  public Microphone keepingSoundIn(Path file) {
    return new Microphone(name, expected, backing, Optional.of(file));
  }

  @Override
  public MicrophoneCapture open(TakeClock clock) {
    return new MicrophoneCapture(this, clock);
  }

  /**
   * Opens a device in the best format that it has.
   *
   * @param name a name from {@link #names()}, or part of one; empty for the system's default
   * @throws holdfast.mistake.UserMistake when it is missing, busy or of the wrong kind
   */
  public static TargetDataLine openLine(String name) {
    return Devices.open(name);
  }
}
