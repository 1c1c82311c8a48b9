package holdfast.window;

import holdfast.backing.BackingPlayer;
import holdfast.backing.sound.OutputLatencies;
import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.SoundChoice;
import holdfast.listening.calibration.Profile;
import holdfast.mistake.UserMistake;
import holdfast.session.input.InputChoice;
import holdfast.session.input.Inputs;
import holdfast.session.input.Surroundings;
import holdfast.window.play.TakeRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What is listened to and what sounds, as the user chose it.
 *
 * @param preferences what was chosen
 * @param folder the user's folder, where latencies and calibrations are kept
 */
public record Devices(Preferences preferences, Path folder) {

  /** The output, with what was measured of it. */
  public SoundChoice sound() {
    return new SoundChoice(
        preferences.text("output"),
        preferences.soundFont().map(SoundBank::read).orElseGet(SoundBank::builtIn),
        preferences.volumePercent() / 100.0,
        SoundChoice.SAFE_BUFFER_MILLIS,
        OutputLatencies.read(folder.resolve("output-latency.properties")));
  }

  /**
   * Where the player is heard: the input that was chosen, or the first of its kind.
   *
   * @throws UserMistake where there is nothing to listen to, with the mend
   */
  public InputChoice input(TakeRequest.Who who) {
    return switch (who) {
      case KEYBOARD ->
          chosen(Inputs.keyboards(), "keyboard")
              .orElseThrow(
                  () ->
                      new UserMistake(
                          "there is no MIDI keyboard; plug one in, sing instead, or watch the"
                              + " demo"));
      case VOICE ->
          chosen(Inputs.microphones(), "microphone")
              .orElseThrow(
                  () ->
                      new UserMistake(
                          "there is no microphone; plug one in, play a keyboard instead, or watch"
                              + " the demo"));
      case DEMO -> throw new IllegalArgumentException("the demo student needs no input");
    };
  }

  private Optional<InputChoice> chosen(List<? extends InputChoice> there, String name) {
    List<InputChoice> all = List.copyOf(there);
    Optional<String> wanted = preferences.text(name);
    return all.stream()
        .filter(input -> wanted.map(input.name()::equals).orElse(true))
        .findFirst()
        .or(() -> all.stream().findFirst());
  }

  /** What an input has to know of what is around it. */
  public Surroundings around(BackingPlayer band) {
    Surroundings around =
        Surroundings.of(band, folder.resolve("calibration"))
            .withHeadphones(preferences.isOn("headphones", false));
    return chosenProfile().map(around::with).orElse(around);
  }

  private Optional<Profile> chosenProfile() {
    return preferences.text("profile").filter(Profile.names()::contains).map(Profile::named);
  }

  /** Who sings or plays; anyone where nobody said. */
  public Profile profile() {
    return chosenProfile().orElse(Profile.ANYONE);
  }
}
