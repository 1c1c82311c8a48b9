package holdfast.listening.alignment;

import holdfast.chart.Changes;
import holdfast.listening.PlayedNote;
import holdfast.theory.ToneClass;
import java.util.List;

/**
 * Where nothing of the backing is in a recording, the line itself must say where bar 1 is: its
 * notes fit their chords best, and fall on beats and halves of beats, where it was played. A guess,
 * and never more: a line that fits its chords a bar later too says nothing.
 */
public final class LineFinder {

  /** Step of the places that are tried, in seconds. */
  private static final double STEP = 0.01;

  /** A player's onset falls this near the beat it is meant for, in seconds (from memory). */
  private static final double TIMING_SECONDS = 0.035;

  /** Share of notes that are meant for no beat or half of one. */
  private static final double ELSEWHERE = 0.25;

  /**
   * Share of notes that are meant for a beat; the rest is for halves. Common practice, no source.
   */
  private static final double ON_BEATS = 0.45;

  /**
   * Shares of slow notes that are of the chord, of its scale and of neither; the first from the
   * Weimar Jazz Database's solos (0.50, and 0.61 of long notes at slow tempi), the rest our own.
   */
  private static final double OF_CHORD = 0.56;

  private static final double OF_SCALE = 0.36;

  private static final double OF_NEITHER = 0.08;

  /** How far after bar 1 players begin, standard deviation in beats; common practice, no source. */
  private static final double ENTRY_BEATS = 5;

  /** Places this near are one, in seconds. */
  private static final double APART = 0.3;

  /** A likely place is this many times likelier than any other. */
  private static final double LIKELY_NATS = 3;

  private final List<PlayedNote> notes;
  private final Changes changes;
  private final double beatSeconds;

  private LineFinder(List<PlayedNote> notes, Changes changes, double beatSeconds) {
    this.notes = notes;
    this.changes = changes;
    this.beatSeconds = beatSeconds;
  }

  /**
   * A guess.
   *
   * @param barOneSeconds where bar 1 begins in the take
   * @param likely whether it stands out of other guesses
   */
  public record Guess(double barOneSeconds, boolean likely) {}

  /**
   * The best guess.
   *
   * @param notes what is sung or played, in order of onset
   * @param changes the chords
   * @param beatSeconds how long a beat is
   */
  public static Guess find(List<PlayedNote> notes, Changes changes, double beatSeconds) {
    if (notes.isEmpty()) {
      return new Guess(0, false);
    }
    return new LineFinder(notes, changes, beatSeconds).find();
  }

  private Guess find() {
    double firstOnset = notes.get(0).onsetSeconds();
    int steps = (int) (8 * ENTRY_BEATS * beatSeconds / STEP);
    double[] score = new double[steps];
    double from = firstOnset - 5 * ENTRY_BEATS * beatSeconds;
    int best = 0;
    for (int i = 0; i < steps; i++) {
      score[i] = score(from + i * STEP, firstOnset);
      best = score[i] > score[best] ? i : best;
    }
    double other = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < steps; i++) {
      if (Math.abs(i - best) * STEP > APART) {
        other = Math.max(other, score[i]);
      }
    }
    double offset =
        best > 0 && best < steps - 1
            ? Peak.offset(score[best - 1], score[best], score[best + 1])
            : 0;
    return new Guess(from + (best + offset) * STEP, score[best] - other > LIKELY_NATS);
  }

  private double score(double barOne, double firstOnset) {
    double entry = (firstOnset - barOne) / beatSeconds / ENTRY_BEATS;
    double sum = -0.5 * entry * entry;
    double spread = TIMING_SECONDS / beatSeconds;
    for (PlayedNote note : notes) {
      double beat = (note.onsetSeconds() - barOne) / beatSeconds;
      double whole = nearness((beat - Math.rint(beat)) / spread) / spread;
      double half = nearness((beat + 0.5 - Math.rint(beat + 0.5)) / spread) / spread;
      sum += Math.log(ELSEWHERE + ON_BEATS * whole + (1 - ELSEWHERE - ON_BEATS) * half);
      double middle = beat + 0.5 * Math.min(1, note.durationSeconds() / beatSeconds);
      sum += note.confidence() * Math.log(fit(note, middle));
    }
    return sum;
  }

  private static double nearness(double deviations) {
    return Math.exp(-0.5 * deviations * deviations) / Math.sqrt(2 * Math.PI);
  }

  private double fit(PlayedNote note, double beat) {
    ToneClass tone = changes.paletteAt(Math.max(0, beat)).toneClass(note.pitch());
    return switch (tone) {
      case CHORD_TONE -> OF_CHORD;
      case TENSION, SCALE_TONE -> OF_SCALE;
      case OUTSIDE -> OF_NEITHER;
    };
  }
}
