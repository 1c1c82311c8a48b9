package holdfast.session.input;

import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.microphone.Microphone;
import holdfast.mistake.UserMistake;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The inputs of this machine at this moment. */
public final class Inputs {

  private Inputs() {}

  /** All of them, keyboards first, each kind in the system's order. */
  public static List<InputChoice> all() {
    return Stream.<InputChoice>concat(keyboards().stream(), microphones().stream()).toList();
  }

  /** The MIDI inputs. */
  public static List<KeyboardInput> keyboards() {
    return Keyboard.all().stream().map(KeyboardInput::new).toList();
  }

  /** The microphones, the system's own choice first. */
  public static List<MicrophoneInput> microphones() {
    return Microphone.names().stream().map(MicrophoneInput::new).toList();
  }

  /**
   * The microphone whose name holds these words, whatever their case; no words mean the first.
   *
   * @throws UserMistake when there is none, naming those that are there
   */
  public static MicrophoneInput microphone(String words) {
    List<MicrophoneInput> there = microphones();
    String wanted = words.strip().toLowerCase(Locale.ROOT);
    return there.stream()
        .filter(m -> m.name().toLowerCase(Locale.ROOT).contains(wanted))
        .findFirst()
        .orElseThrow(() -> new UserMistake(missing(words, there)));
  }

  private static String missing(String words, List<MicrophoneInput> there) {
    return there.isEmpty()
        ? "no microphone is connected; plug one in, or play on a MIDI keyboard instead"
        : "there is no microphone \""
            + words
            + "\"; there are: "
            + String.join(", ", there.stream().map(MicrophoneInput::name).toList());
  }
}
