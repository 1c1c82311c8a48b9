package holdfast.motif;

import holdfast.melody.Note;
import java.util.List;

/** Notes as plain arrays, times divided by a unit, for the inner loops. */
final class Line {

  final int size;
  final double[] onset;
  final double[] duration;
  final int[] pitch;

  /** How far above its pitch each note was sung, in cents. */
  final double[] cents;

  private Line(double[] onset, double[] duration, int[] pitch, double[] cents) {
    this.cents = cents;
    this.size = onset.length;
    this.onset = onset;
    this.duration = duration;
    this.pitch = pitch;
  }

  /** The notes with all times divided by {@code unit}. */
  static Line of(List<Note> notes, double unit) {
    int n = notes.size();
    double[] onset = new double[n];
    double[] duration = new double[n];
    int[] pitch = new int[n];
    double[] cents = new double[n];
    for (int i = 0; i < n; i++) {
      Note note = notes.get(i);
      onset[i] = note.onsetBeats() / unit;
      duration[i] = note.durationBeats() / unit;
      pitch[i] = note.pitch();
      cents[i] = note.cents();
    }
    return new Line(onset, duration, pitch, cents);
  }

  /** The pitches in reversed order over the same rhythm, or over the reversed rhythm. */
  Line reversed(boolean rhythmToo) {
    double[] on = onset;
    double[] dur = duration;
    if (rhythmToo) {
      on = new double[size];
      dur = new double[size];
      for (int i = 0; i < size; i++) {
        on[i] = onset[0] + onset[size - 1] - onset[size - 1 - i];
        dur[i] = duration[size - 1 - i];
      }
    }
    int[] turned = new int[size];
    double[] turnedCents = new double[size];
    for (int i = 0; i < size; i++) {
      turned[i] = pitch[size - 1 - i];
      turnedCents[i] = cents[size - 1 - i];
    }
    return new Line(on, dur, turned, turnedCents);
  }

  /** Whether all times between onsets are alike, as far as ears tell. */
  boolean isEven() {
    double mean = span() / Math.max(1, size - 1);
    for (int i = 1; i < size; i++) {
      if (Math.abs(onset[i] - onset[i - 1] - mean) > EVEN_WITHIN * mean) {
        return false;
      }
    }
    return true;
  }

  /**
   * Whether its notes lie beside the keys, as a voice's do; else nothing is known of its tuning.
   */
  boolean isTuned() {
    for (double beside : cents) {
      if (beside != 0) {
        return true;
      }
    }
    return false;
  }

  /** From the first onset to the last. */
  double span() {
    return size == 0 ? 0 : onset[size - 1] - onset[0];
  }

  /**
   * The pulse of a line, in the notes' own beats: the mean of those times between onsets that are
   * near the shortest one. Rhythms are told in multiples of it, so that a line and its copy at
   * another tempo are the same to the judge. A line of one note has its length for a pulse.
   */
  static double pulse(List<Note> notes) {
    double shortest = Double.POSITIVE_INFINITY;
    double longest = 0;
    for (int i = 1; i < notes.size(); i++) {
      double step = notes.get(i).onsetBeats() - notes.get(i - 1).onsetBeats();
      longest = Math.max(longest, step);
      if (step > SAME_TIME) {
        shortest = Math.min(shortest, step);
      }
    }
    if (longest <= SAME_TIME) {
      return notes.get(0).durationBeats();
    }
    // A flam or a grace note is no pulse.
    shortest = Math.max(shortest, longest / LONGEST_IN_PULSES);
    double sum = 0;
    int count = 0;
    for (int i = 1; i < notes.size(); i++) {
      double step = notes.get(i).onsetBeats() - notes.get(i - 1).onsetBeats();
      if (step >= shortest / NEAR && step <= shortest * NEAR) {
        sum += step;
        count++;
      }
    }
    return count == 0 ? shortest : sum / count;
  }

  /** Steps that differ by less than a sixth of their mean are even. */
  private static final double EVEN_WITHIN = 1 / 6.0;

  /** Two onsets nearer than this, in beats, are one moment. */
  private static final double SAME_TIME = 1e-6;

  /** No pulse is less than this part of the longest step: a sixteenth in a whole note. */
  private static final double LONGEST_IN_PULSES = 16;

  /** Steps within this ratio of the shortest one are the same note value: less than 4:3. */
  private static final double NEAR = 1.3;
}
