package holdfast.session.input;

import holdfast.backing.BackingPlayer;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.KnownSound;
import java.nio.file.Path;
import java.util.Optional;
import javax.sound.midi.Receiver;

/**
 * What an input finds around it: where the backing sounds, who plays, what was measured before.
 *
 * @param band plays the backing, which a microphone hears too
 * @param calibrations folder of what was measured of pairs of devices
 * @param profile what to expect of the voice or instrument, if the player said
 * @param headphones whether the backing is heard through headphones, and so by no microphone
 * @param voice sounds a keyboard that makes no sound itself, if asked for
 */
public record Surroundings(
    BackingPlayer band,
    Path calibrations,
    Optional<Profile> profile,
    boolean headphones,
    Optional<Receiver> voice) {

  /** A band and what was measured; nothing else is known. */
  public static Surroundings of(BackingPlayer band, Path calibrations) {
    return new Surroundings(band, calibrations, Optional.empty(), false, Optional.empty());
  }

  /** What is sounding in the room beside the player; empty where nothing can be heard of it. */
  Optional<KnownSound> sounding() {
    return band.tap().map(tap -> new BackingSound(band, tap));
  }

  /** The same, with this kind of voice or instrument. */
  public Surroundings with(Profile who) {
    return new Surroundings(band, calibrations, Optional.of(who), headphones, voice);
  }

  /** The same, with headphones or without. */
  public Surroundings withHeadphones(boolean worn) {
    return new Surroundings(band, calibrations, profile, worn, voice);
  }

  /** The same, and a keyboard is sounded through this. */
  public Surroundings sounding(Receiver keyboardVoice) {
    return new Surroundings(band, calibrations, profile, headphones, Optional.of(keyboardVoice));
  }
}
