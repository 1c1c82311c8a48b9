package holdfast.chart;

import holdfast.theory.Harmony;

/**
 * One chord of the changes and how long it lasts.
 *
 * @param startBeat where it starts, in beats; 0 is the first beat of bar 1, a pick-up is negative
 * @param lengthBeats how long it lasts, in beats, more than 0; infinite where it goes on for good
 * @param harmony what sounds
 * @param bar the bar of the form that it starts in, counted from 1; 0 is the pick-up bar
 */
public record ChordSpan(double startBeat, double lengthBeats, Harmony harmony, int bar) {

  /** Checks the times and the bar. */
  public ChordSpan {
    if (!Double.isFinite(startBeat)) {
      throw new IllegalArgumentException("a chord must start at a finite beat, not " + startBeat);
    }
    if (!(lengthBeats > 0)) {
      throw new IllegalArgumentException("a chord must last more than 0 beats, not " + lengthBeats);
    }
    if (bar < 0) {
      throw new IllegalArgumentException("a bar's number must be 0 or more, not " + bar);
    }
  }

  /** Where the next chord starts, in the same beats as the start. */
  public double endBeat() {
    return startBeat + lengthBeats;
  }

  /** The same chord of the same bar, so many beats later; a later chorus is such a shift. */
  public ChordSpan later(double beats) {
    return beats == 0 ? this : new ChordSpan(startBeat + beats, lengthBeats, harmony, bar);
  }
}
