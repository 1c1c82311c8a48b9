package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.List;

/**
 * A solo whose phrase ends are known, because we made it.
 *
 * @param notes in order of onset
 * @param firsts index of the first note of each phrase, beginning with 0
 * @param beatsPerMinute the tempo that was counted in
 */
public record MadeSolo(List<PlayedNote> notes, List<Integer> firsts, double beatsPerMinute) {

  public MadeSolo {
    notes = List.copyOf(notes);
    firsts = List.copyOf(firsts);
  }
}
