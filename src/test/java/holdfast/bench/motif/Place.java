package holdfast.bench.motif;

import holdfast.chart.Changes;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.PitchClassSet;

/** A beat of a chart where a phrase may start, and what lies under it. */
record Place(Changes changes, double beat, double tempo) {

  Harmony harmony() {
    return changes.at(beat).harmony();
  }

  ChordPalette palette() {
    return changes.paletteAt(beat);
  }

  PitchClassSet scale() {
    return palette().scale();
  }

  /** Chord tones and tensions that can be held. */
  PitchClassSet welcome() {
    return palette().chordTones().union(palette().tensions()).minus(palette().handled());
  }

  /** The nearest note of the set, the lower one of two. */
  static int nearest(PitchClassSet set, int pitch) {
    for (int off = 0; off < 12; off++) {
      if (set.contains(pitch - off)) {
        return pitch - off;
      }
      if (set.contains(pitch + off)) {
        return pitch + off;
      }
    }
    return pitch;
  }

  /** So many steps along the set from a pitch, which is first put onto it. */
  static int step(PitchClassSet set, int pitch, int steps) {
    int at = nearest(set, pitch);
    int left = Math.abs(steps);
    while (left > 0) {
      at += Integer.signum(steps);
      if (set.contains(at)) {
        left--;
      }
    }
    return at;
  }
}
