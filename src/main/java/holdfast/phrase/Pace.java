package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.Arrays;
import java.util.List;

/** How fast is the playing around each note, seen from afterwards? */
final class Pace {

  /** Notes on either side that a listener hears together with this one. */
  private static final int REACH = 6;

  /** Notes in one stroke have no pace, in seconds. */
  private static final double SHORTEST_IOI = 0.02;

  private Pace() {}

  /** The median IOI around the gap after each note, in seconds. */
  static double[] along(List<PlayedNote> notes) {
    int gaps = Math.max(0, notes.size() - 1);
    double[] pace = new double[gaps];
    for (int i = 0; i < gaps; i++) {
      int from = Math.max(0, i - REACH);
      int to = Math.min(gaps, i + REACH + 1);
      double[] iois = new double[to - from];
      for (int k = from; k < to; k++) {
        iois[k - from] = notes.get(k + 1).onsetSeconds() - notes.get(k).onsetSeconds();
      }
      Arrays.sort(iois);
      // Rests between phrases are among them, so the lower middle is the pace.
      pace[i] = Math.max(SHORTEST_IOI, iois[(iois.length - 1) / 2]);
    }
    return pace;
  }
}
