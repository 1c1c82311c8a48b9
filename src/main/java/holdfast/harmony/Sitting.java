package holdfast.harmony;

import holdfast.chart.ChordSpan;
import holdfast.melody.Note;
import holdfast.theory.ToneClass;
import java.util.Optional;

/** How well one note sits, each chord that sounds under it judged in its time. */
final class Sitting {

  /** A note that hangs over into a chord by less than this, in beats, does not meet it. */
  private static final double SHORTEST_MEETING_BEATS = 0.1;

  private Sitting() {}

  /** The mean of the trade weights over the chords under the note, by how long each sounds. */
  static double of(LineReading reading, int i, LineReading.Reading read) {
    Note note = reading.note(i);
    boolean resolved = isResolved(read);
    ChordHere judged = read.chord().orElseThrow();
    if (read.role() == NoteRole.ANTICIPATION || reading.changeAfter(i) >= note.endBeats()) {
      return over(judged, note.pitch(), resolved, read.role());
    }
    double sum = 0;
    double time = 0;
    for (ChordSpan span : reading.changes().between(note.onsetBeats(), note.endBeats())) {
      double from = Math.max(note.onsetBeats(), span.startBeat());
      double shared = Math.min(note.endBeats(), span.endBeat()) - from;
      Optional<ChordHere> here = ChordHere.at(reading.changes(), from);
      if (here.isPresent() && shared >= SHORTEST_MEETING_BEATS) {
        sum += shared * over(here.get(), note.pitch(), resolved, read.role());
        time += shared;
      }
    }
    return time > 0 ? sum / time : over(judged, note.pitch(), resolved, read.role());
  }

  private static boolean isResolved(LineReading.Reading read) {
    return read.role().effect() == NoteRole.Effect.RESOLVES
        || (read.role() == NoteRole.NEIGHBOUR && read.goal().isPresent());
  }

  private static double over(ChordHere here, int pitch, boolean resolved, NoteRole role) {
    if (role == NoteRole.BLUE_NOTE) {
      // A blue note is a colour of its chord, wherever the scale puts it.
      return TradeWeights.of(ToneClass.TENSION, false);
    }
    if (role == NoteRole.HELD_AGAINST) {
      return TradeWeights.of(here.toneClassWhenHeld(pitch), false);
    }
    return here.isDisputed(pitch) && !resolved
        ? TradeWeights.DISPUTED
        : TradeWeights.of(here.toneClass(pitch), resolved);
  }
}
