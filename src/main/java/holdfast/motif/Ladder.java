package holdfast.motif;

import holdfast.theory.PitchClassSet;

/**
 * A scale as a ladder of pitches, counted in steps. A pitch between two rungs is the lower rung and
 * so many semitones.
 *
 * <p>A tonal sequence keeps every interval's number of steps: it moves the idea along the ladder,
 * or on to another ladder of as many rungs an octave, and lets the semitones fall as they will.
 */
final class Ladder {

  /** Scales mostly have seven notes, a letter each. */
  static final int USUAL_RUNGS = 7;

  private final int[] rungs;
  private final int shift;
  private final int[] stepOf;
  private final int[] above;

  private Ladder(Ladder same, int shift) {
    this.rungs = same.rungs;
    this.stepOf = same.stepOf;
    this.above = same.above;
    this.shift = shift;
  }

  private Ladder(PitchClassSet scale, int shift) {
    this.rungs = new int[scale.size()];
    int count = 0;
    for (int pc = 0; pc < 12; pc++) {
      if (scale.contains(pc)) {
        rungs[count++] = pc;
      }
    }
    this.shift = shift;
    this.stepOf = new int[12];
    this.above = new int[12];
    int below = -1;
    for (int pc = 0; pc < 12; pc++) {
      below += scale.contains(pc) ? 1 : 0;
      if (below < 0) {
        stepOf[pc] = -1;
        above[pc] = pc + 12 - rungs[rungs.length - 1];
      } else {
        stepOf[pc] = below;
        above[pc] = pc - rungs[below];
      }
    }
  }

  /** The scale's ladder; the scale must not be empty. */
  static Ladder of(PitchClassSet scale) {
    return new Ladder(scale, 0);
  }

  /**
   * This ladder with its steps counted so that step for step it lies as near as can be to {@code
   * other}: E over C major and E flat over A flat major are the same step.
   */
  Ladder alongside(Ladder other) {
    int best = 0;
    int least = Integer.MAX_VALUE;
    for (int s = -2; s <= 2; s++) {
      int apart = 0;
      for (int step = 0; step < rungs.length; step++) {
        apart += Math.abs(pitch(step + s) - other.pitch(step));
      }
      if (apart < least) {
        least = apart;
        best = s;
      }
    }
    return new Ladder(this, shift + best);
  }

  int rungsInOctave() {
    return rungs.length;
  }

  /** The step at or just below the pitch. */
  int step(int pitch) {
    return Math.floorDiv(pitch, 12) * rungs.length + stepOf[Math.floorMod(pitch, 12)] - shift;
  }

  /** The steps at or just below the pitches. */
  int[] steps(int[] pitches) {
    int[] steps = new int[pitches.length];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = step(pitches[i]);
    }
    return steps;
  }

  /** How many semitones the pitch lies above that step: 0 where it is a note of the scale. */
  int above(int pitch) {
    return above[Math.floorMod(pitch, 12)];
  }

  /** The pitch of a step. */
  int pitch(int step) {
    int s = step + shift;
    return 12 * Math.floorDiv(s, rungs.length) + rungs[Math.floorMod(s, rungs.length)];
  }
}
