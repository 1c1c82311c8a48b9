package holdfast.harmony;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.ToneClass;
import java.util.Optional;

/**
 * One note with what it does over its chord.
 *
 * @param note the note
 * @param harmony the chord that it was judged by: the one it starts over, or the next where it
 *     comes early or stays too long; no chord where none sounds
 * @param toneClass what it is against that chord; {@link ToneClass#OUTSIDE} where none sounds
 * @param role what it does
 * @param goal the note that it leads to or gives way to
 * @param sits how well it sits in the chords of its time, 0 to 1, by the weights of the trade; 0
 *     where none sounds
 * @param logOdds how much likelier an expert plays it there than a player at random, as a natural
 *     logarithm; 0 where no chord sounds
 * @param weight how much it counts in its phrase: long, accented and last notes more; 0 where no
 *     chord sounds
 */
public record HeardNote(
    Note note,
    Harmony harmony,
    ToneClass toneClass,
    NoteRole role,
    Optional<Note> goal,
    double sits,
    double logOdds,
    double weight) {

  /** Why it has this role, in a sentence for the player. */
  public String sentence(Optional<Key> key) {
    return RoleSentence.of(this, key);
  }
}
