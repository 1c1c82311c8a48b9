package holdfast.phrase;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import java.util.List;

/**
 * A take whose idea and phrase ends are known, because we made it.
 *
 * @param idea what is carried, in beats from its own start
 * @param notes as they were played
 * @param firsts index of the first note of each phrase, beginning with 0
 * @param beatsPerMinute the tempo
 */
public record MadeTake(
    List<Note> idea, List<PlayedNote> notes, List<Integer> firsts, double beatsPerMinute) {

  public MadeTake {
    idea = List.copyOf(idea);
    notes = List.copyOf(notes);
    firsts = List.copyOf(firsts);
  }
}
