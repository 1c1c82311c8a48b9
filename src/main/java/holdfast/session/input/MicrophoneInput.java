package holdfast.session.input;

import holdfast.listening.calibration.Calibration;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.Expected;
import holdfast.listening.microphone.Microphone;
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

  /** Said before a child or anyone else is recorded. */
  public static final String STAYS_HERE =
      "What the microphone hears is kept with the take, on this machine only; nothing is sent"
          + " anywhere. Record children only if those who look after them agree.";

  /** Said before anyone sings. */
  public static final String VOICE =
      "Sing as you speak, without pressing. If your throat hurts or you get hoarse, stop for today;"
          + " if it stays, ask your teacher or a doctor.";

  private static final String NOT_CALIBRATED =
      "This microphone is not measured yet, so times may be a little off: holdfast calibrate takes"
          + " half a minute.";

  private static final String STALE =
      "It is long ago that this microphone was measured; measure it again: holdfast calibrate.";

  private static final String BLEED =
      "Headphones help me to hear you alone; without them I take the backing out of what I hear.";

  @Override
  public ReadyInput in(Surroundings around) {
    Optional<Calibration> measured =
        Calibration.stored(around.calibrations(), around.band().output(), name);
    List<String> remarks = new ArrayList<>(List.of(STAYS_HERE, VOICE));
    if (measured.isEmpty()) {
      remarks.add(NOT_CALIBRATED);
    } else if (measured.get().isStale(Instant.now())) {
      remarks.add(STALE);
    }
    if (!around.headphones()) {
      remarks.add(BLEED);
    }
    return new ReadyInput(
        microphone(around, measured), player(around.profile()), around.profile(), remarks);
  }

  private Microphone microphone(Surroundings around, Optional<Calibration> measured) {
    Profile who = around.profile().orElse(Profile.ANYONE);
    Expected anyone = Expected.ANYONE.between(who.lowestHz(), who.highestHz());
    Expected expected =
        measured
            .map(
                m ->
                    anyone
                        .late(m.delaySeconds())
                        .in(m.levels(), who.gateDb())
                        .tuned(m.tuningCents()))
            .orElse(anyone);
    return Microphone.named(name).expecting(expected);
  }

  /** Who has said nothing sings. An instrument's pitches are surer than a voice's. */
  private static Player player(Optional<Profile> who) {
    boolean sings = who.map(Profile::name).map(n -> n.endsWith("voice")).orElse(true);
    return sings ? Player.VOICE : Player.UNKNOWN;
  }
}
