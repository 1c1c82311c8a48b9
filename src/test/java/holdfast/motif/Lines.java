package holdfast.motif;

import holdfast.melody.Note;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;

/** Lines and grounds for tests of the model's parts. */
final class Lines {

  static final PitchClassSet C_MAJOR = PitchClassSet.of(0, 2, 4, 5, 7, 9, 11);

  /** Over C major seven in C: the F is the one note of the scale that nobody holds. */
  static final Ground C =
      new Ground(PitchClassSet.of(0, 4, 7, 11), C_MAJOR, PitchClassSet.of(0, 2, 4, 7, 9, 11));

  private Lines() {}

  /** Even notes, a pulse apart. */
  static Line even(int... pitches) {
    double[] onsets = new double[pitches.length];
    for (int i = 0; i < onsets.length; i++) {
      onsets[i] = i;
    }
    return at(onsets, pitches);
  }

  static Line at(double[] onsets, int... pitches) {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < pitches.length; i++) {
      notes.add(new Note(onsets[i], 0.2, pitches[i]));
    }
    return Line.of(notes, 1);
  }

  static Ground[] everywhere(Ground ground, Line line) {
    Ground[] grounds = new Ground[line.size];
    java.util.Arrays.fill(grounds, ground);
    return grounds;
  }
}
