package holdfast.session.input;

import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.Expected;
import holdfast.listening.microphone.Microphone;
import holdfast.mistake.UserMistake;
import holdfast.motif.Player;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A microphone that is sung or played into.
 *
 * @param name its plain name, from {@link Microphone#names()}
 */
public record MicrophoneInput(String name) implements InputChoice {

  /** The folder in the user's folder that keeps what was measured of pairs of devices. */
  public static final String CALIBRATIONS = "calibration";

  /** Said before a child or anyone else is recorded. */
  public static final String STAYS_HERE =
      "What the microphone hears is kept with the take, on this machine only; nothing is sent"
          + " anywhere. Record children only if those who look after them agree.";

  /** Said before anyone sings. */
  public static final String VOICE =
      "Sing as you speak, without pressing. If your throat hurts or you get hoarse, stop for today;"
          + " if it stays, ask your teacher or a doctor.";

  /**
   * From the air to us, before it is measured: what systems gather before they pass it on, from
   * memory.
   */
  private static final double UNMEASURED_DELAY_SECONDS = 0.010;

  private static final String NOT_MEASURED =
      "This microphone is not measured yet, so times may be a little off: holdfast calibrate takes"
          + " half a minute.";

  private static final String BLEED =
      "Headphones help me to hear you alone; without them I take the backing out of what I hear.";

  /**
   * {@inheritDoc}
   *
   * @throws UserMistake also when the device is missing or busy, so that no take is begun in vain
   */
  @Override
  public ReadyInput in(Surroundings around) {
    Microphone.openLine(name).close();
    Optional<Calibration> measured = measured(around);
    List<String> remarks = new ArrayList<>(List.of(STAYS_HERE, VOICE));
    remarks.addAll(measured.map(MicrophoneInput::oldOrNot).orElse(List.of(NOT_MEASURED)));
    if (!around.headphones()) {
      remarks.add(BLEED);
    }
    return new ReadyInput(microphone(around), player(around.profile()), around.profile(), remarks);
  }

  /** The microphone itself, with all that is known of its devices and its player. */
  public Microphone microphone(Surroundings around) {
    Profile who = around.profile().orElse(Profile.ANYONE);
    Microphone alone = Microphone.named(name).expecting(expected(around, who, measured(around)));
    return around.headphones() ? alone : around.sounding().map(alone::beside).orElse(alone);
  }

  private Optional<Calibration> measured(Surroundings around) {
    return Calibration.stored(around.calibrations(), around.band().output(), name);
  }

  private static List<String> oldOrNot(Calibration measured) {
    return measured.complaint(Instant.now(), 0).stream().toList();
  }

  private static Expected expected(
      Surroundings around, Profile who, Optional<Calibration> measured) {
    Expected plain =
        Expected.ANYONE
            .between(who.lowestHz(), who.highestHz())
            .late(UNMEASURED_DELAY_SECONDS)
            .like(who.manner());
    return measured
        .map(
            m ->
                plain
                    .late(Math.max(0, m.delaySeconds() - around.band().latencySeconds()))
                    .in(m.levels())
                    .tuned(m.tuningCents()))
        .orElse(plain);
  }

  /** Who has said nothing sings. An instrument's pitches are surer than a voice's. */
  private static Player player(Optional<Profile> who) {
    boolean sings = who.map(Profile::name).map(n -> n.endsWith("voice")).orElse(true);
    return sings ? Player.VOICE : Player.UNKNOWN;
  }
}
