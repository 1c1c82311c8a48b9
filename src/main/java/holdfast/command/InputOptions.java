package holdfast.command;

import holdfast.backing.PitchRange;
import holdfast.backing.PlayerVoice;
import holdfast.backing.SoundPlayer;
import holdfast.book.UserFolder;
import holdfast.listening.calibration.Profile;
import holdfast.listening.keyboard.Keyboard;
import holdfast.mistake.UserMistake;
import holdfast.session.input.InputChoice;
import holdfast.session.input.Inputs;
import holdfast.session.input.KeyboardInput;
import holdfast.session.input.Surroundings;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Who is listened to: the options of every command that hears a player live. */
final class InputOptions {

  @Option(
      names = "--input",
      paramLabel = "NAME",
      description = "Listen to the MIDI input whose name holds this; the first one without it.")
  private Optional<String> input = Optional.empty();

  @Option(
      names = "--microphone",
      arity = "0..1",
      fallbackValue = "",
      paramLabel = "NAME",
      description =
          "Listen to the microphone whose name holds this; to the system's own without a name.")
  private Optional<String> microphone = Optional.empty();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "Who sings or plays into the microphone: child-voice, voice, trumpet …")
  private Optional<String> profile = Optional.empty();

  @Option(
      names = "--headphones",
      description = "I wear headphones, so the microphone does not hear the backing.")
  private boolean headphones;

  @Option(
      names = "--sound-me",
      description = "Sound my keyboard, too; for keyboards that make no sound themselves.")
  private boolean soundMe;

  /**
   * {@code --microphone} takes a name or none, so a chart that follows it looks like its name.
   * Gives that back, and listens to the system's own microphone.
   */
  Optional<String> chartBehindMicrophone() {
    Optional<String> stray = microphone.filter(name -> !name.isEmpty());
    if (stray.isPresent()) {
      microphone = Optional.of("");
    }
    return stray;
  }

  /** The input that is asked for. */
  InputChoice choice() {
    return microphone
        .<InputChoice>map(Inputs::microphone)
        .orElseGet(() -> new KeyboardInput(keyboard()));
  }

  /** What the input finds around it. */
  Surroundings around(SoundPlayer band) {
    Surroundings around =
        Surroundings.of(band, UserFolder.path().resolve("calibration")).withHeadphones(headphones);
    if (profile.isPresent()) {
      around = around.with(Profile.named(profile.get()));
    }
    return soundMe ? around.sounding(new PlayerVoice(band.out())) : around;
  }

  /** The range of whoever sings or plays into the microphone, where that was told. */
  Optional<PitchRange> singersRange() {
    return microphone
        .flatMap(name -> profile)
        .map(Profile::named)
        .map(who -> new PitchRange(who.lowest(), who.highest()));
  }

  /** Whether a keyboard is to be sounded. */
  boolean soundsMe() {
    return soundMe;
  }

  private Keyboard keyboard() {
    if (input.isPresent()) {
      return Keyboard.named(input.get());
    }
    return Keyboard.all().stream()
        .findFirst()
        .orElseThrow(
            () ->
                new UserMistake(
                    "there is no MIDI input; plug a keyboard in, or sing into a microphone with"
                        + " --microphone"));
  }
}
