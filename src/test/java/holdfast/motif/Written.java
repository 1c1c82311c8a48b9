package holdfast.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;

/** Short ways to write notes in tests. */
final class Written {

  private Written() {}

  /** A typical idea rhythm, as in the tables of adaptations: two eighths, quarter, eighth, long. */
  static final double[] TYPICAL = {0, 0.5, 1, 2, 2.5};

  /** Pitches over onsets, each note up to the next. */
  static List<Note> line(double start, double[] onsets, int... pitches) {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < pitches.length; i++) {
      double next = i + 1 < pitches.length ? onsets[i + 1] : onsets[i] + 1;
      notes.add(new Note(start + onsets[i], 0.9 * (next - onsets[i]), pitches[i]));
    }
    return notes;
  }

  static List<Note> typical(double start, int... pitches) {
    return line(start, TYPICAL, pitches);
  }
}
