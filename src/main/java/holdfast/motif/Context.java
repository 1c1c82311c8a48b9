package holdfast.motif;

import holdfast.chart.Changes;
import holdfast.theory.Key;
import java.util.Optional;

/**
 * What the judge knows beside the notes.
 *
 * @param changes the chords under the phrase, in the beats of its notes; empty where none are known
 * @param key the key of the tune; empty where it is not known
 * @param player whose hands or voice it was
 * @param beatsPerBar how many beats a bar has, more than 0; tells where in the bar a phrase starts
 * @param priors how likely each treatment was before the phrase was heard
 */
public record Context(
    Optional<Changes> changes,
    Optional<Key> key,
    Player player,
    double beatsPerBar,
    Priors priors) {

  /** Nothing is known but the notes, in bars of four. */
  public static final Context NOTES_ONLY =
      new Context(Optional.empty(), Optional.empty(), Player.UNKNOWN, 4, Priors.START);

  /** Checks that a bar has a length. */
  public Context {
    if (!(beatsPerBar > 0) || !Double.isFinite(beatsPerBar)) {
      throw new IllegalArgumentException("a bar must have more than 0 beats, not " + beatsPerBar);
    }
  }

  /** A tune's chords and key, and a kind of player. */
  public static Context over(Changes changes, Player player, double beatsPerBar) {
    return new Context(Optional.of(changes), changes.key(), player, beatsPerBar, Priors.START);
  }

  /** The same with other priors. */
  public Context with(Priors other) {
    return new Context(changes, key, player, beatsPerBar, other);
  }
}
