package holdfast.motif;

/** Pitch maps that leave something open: the ending, or the octave. */
final class Endings {

  /** Share of notes that stay in their octave where some do not. */
  private static final double SAME_OCTAVE = 0.75;

  private Endings() {}

  /** The map with the last {@code tail} notes free. */
  static PitchMap open(PitchMap map, int n, int m, int tail, Background background) {
    double[] notes = map.notes().clone();
    for (int i = n - tail; i < n; i++) {
      for (int j = 0; j < m; j++) {
        notes[i * m + j] = background.pitch[j];
      }
    }
    return new PitchMap(
        map.move(), map.expected(), notes, map.semitones(), map.steps(), map.logPrior());
  }

  /** The map with every note free to lie an octave away. */
  static PitchMap anyOctave(PitchMap map, Line phrase) {
    int m = phrase.size;
    int[] expected = map.expected().clone();
    double[] notes = map.notes().clone();
    for (int c = 0; c < notes.length; c++) {
      int off = phrase.pitch[c % m] - expected[c];
      if (off == 12 || off == -12) {
        expected[c] += off;
        notes[c] = Math.log((1 - SAME_OCTAVE) / 2);
      } else {
        notes[c] += Math.log(SAME_OCTAVE);
      }
    }
    return new PitchMap(map.move(), expected, notes, map.semitones(), map.steps(), map.logPrior());
  }

  /** Whether some aligned notes lie in another octave and some do not. */
  static boolean someInAnotherOctave(PitchMap octaves, Line phrase, int[] ideaOf) {
    int m = phrase.size;
    int away = 0;
    int home = 0;
    for (int j = 0; j < m; j++) {
      if (ideaOf[j] >= 0) {
        if (octaves.notes()[ideaOf[j] * m + j] == Math.log((1 - SAME_OCTAVE) / 2)) {
          away++;
        } else {
          home++;
        }
      }
    }
    return away > 0 && home > 0;
  }
}
