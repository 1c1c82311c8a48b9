package holdfast.session.input;

import holdfast.listening.NoteSource;
import holdfast.listening.calibration.Profile;
import holdfast.motif.Player;
import java.util.List;
import java.util.Optional;

/**
 * An input with all that is known about it, ready for a take.
 *
 * @param source to be listened to
 * @param player how exactly this player's notes can be taken
 * @param profile what is expected of the voice or instrument, if anything was said
 * @param remarks what the player should know before the take, a sentence each
 */
public record ReadyInput(
    NoteSource source, Player player, Optional<Profile> profile, List<String> remarks) {

  /** Copies the list. */
  public ReadyInput {
    remarks = List.copyOf(remarks);
  }
}
