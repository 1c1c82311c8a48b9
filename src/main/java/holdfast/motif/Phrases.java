package holdfast.motif;

import holdfast.melody.Note;
import java.util.List;

/** The one place that checks notes that come in. */
final class Phrases {

  private Phrases() {}

  /** Checks that there are notes, in order of onset. */
  static void check(String what, List<Note> notes) {
    if (notes.isEmpty()) {
      throw new IllegalArgumentException(what + " needs at least one note");
    }
    for (int i = 1; i < notes.size(); i++) {
      if (notes.get(i).onsetBeats() < notes.get(i - 1).onsetBeats()) {
        throw new IllegalArgumentException(
            what + "'s notes must be in order of onset; note " + (i + 1) + " comes too early");
      }
    }
  }
}
