package holdfast.motif;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * What became of each note: kept, moved because the chord asked for it, moved by choice, slipped,
 * left out, put in.
 */
final class NoteChanges {

  /** A note that makes way for a chord goes no farther than this, in semitones. */
  private static final int SKEW_REACH = 3;

  private final Line idea;
  private final Line phrase;
  private final Ground[] grounds;

  NoteChanges(Line idea, Line phrase, Ground[] grounds) {
    this.idea = idea;
    this.phrase = phrase;
    this.grounds = grounds;
  }

  /**
   * Note by note, in the phrase's order.
   *
   * @param ideaOf for each phrase note the idea note that it stands for, or −1
   * @param moved how far the whole was moved, in semitones
   */
  List<NoteChange> of(Explanation e, int[] ideaOf, int moved) {
    List<NoteChange> changes = new ArrayList<>();
    boolean[] used = new boolean[idea.size];
    for (int i : ideaOf) {
      if (i >= 0) {
        used[i] = true;
      }
    }
    int m = phrase.size;
    int last = -1;
    for (int j = 0; j < m; j++) {
      int i = ideaOf[j];
      if (i < 0) {
        changes.add(
            new NoteChange(NoteChange.Kind.ADDED, OptionalInt.empty(), OptionalInt.of(j), 0));
        continue;
      }
      for (int d = last + 1; d < i && !e.backwards(); d++) {
        addDropped(changes, used, d);
      }
      last = i;
      int mapped = e.backwards() ? idea.size - 1 - i : i;
      int meant = e.map().expected()[mapped * m + j];
      int way = e.treatment() == Treatment.INVERTED ? 1 : -1;
      double beside = phrase.cents[j] + way * idea.cents[i];
      int off = Intonation.semitones(phrase.pitch[j] - meant, beside);
      changes.add(change(e, i, j, off, moved));
    }
    for (int d = 0; d < idea.size; d++) {
      addDropped(changes, used, d);
    }
    return changes;
  }

  private static void addDropped(List<NoteChange> changes, boolean[] used, int d) {
    if (!used[d]) {
      used[d] = true;
      changes.add(
          new NoteChange(NoteChange.Kind.DROPPED, OptionalInt.of(d), OptionalInt.empty(), 0));
    }
  }

  private NoteChange change(Explanation e, int i, int j, int off, int moved) {
    NoteChange.Kind kind = kind(e, j, off);
    int semitones = off;
    if (kind == NoteChange.Kind.KEPT && e.map().move() == PitchMap.Move.STEPS && !turns(e)) {
      // In its place by steps; but would it have stood well where the idea, moved as it is, has it?
      int rigid = idea.pitch[i] + moved;
      if (phrase.pitch[j] != rigid && clashes(j, rigid) && !clashes(j, phrase.pitch[j])) {
        kind = NoteChange.Kind.MOVED_TO_FIT;
        semitones = phrase.pitch[j] - rigid;
      }
    }
    return new NoteChange(kind, OptionalInt.of(i), OptionalInt.of(j), semitones);
  }

  private static boolean turns(Explanation e) {
    return e.treatment() == Treatment.INVERTED || e.backwards();
  }

  private boolean clashes(int j, int pitch) {
    return grounds[j].knowsChord() && !grounds[j].welcomes(pitch);
  }

  private NoteChange.Kind kind(Explanation e, int j, int off) {
    if (off == 0) {
      return NoteChange.Kind.KEPT;
    }
    Ground ground = grounds[j];
    int meant = phrase.pitch[j] - off;
    boolean near = Math.abs(off) <= SKEW_REACH && e.treatment() != Treatment.RHYTHM_KEPT;
    if (near && clashes(j, meant) && ground.welcomes(phrase.pitch[j])) {
      return NoteChange.Kind.MOVED_TO_FIT;
    }
    boolean byChoice =
        e.treatment() == Treatment.CONTOUR_KEPT
            || e.treatment() == Treatment.RHYTHM_KEPT
            || (e.map().move() == PitchMap.Move.SKEWED && ground.welcomes(phrase.pitch[j]));
    boolean doesAsWell = ground.knowsChord() && ground.welcomes(phrase.pitch[j]);
    return byChoice || doesAsWell || Math.abs(off) > 2
        ? NoteChange.Kind.MOVED
        : NoteChange.Kind.SLIPPED;
  }
}
