package holdfast.melody;

import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A small played idea in the plainest rhythm that it can be meant in: eighth notes where all its
 * notes stand near them, else triplets, else sixteenths. A player who comes late throughout is
 * taken to mean the beat, and a note that is let go a little early to last until the next. Common
 * practice of those who write down what they hear, no source.
 */
public final class PlainRhythm {

  /** Parts of a quarter note, the plainest first. */
  private static final int[] GRIDS = {2, 3, 4};

  /** What a grid that is less plain has to gain, in quarter notes in the mean. */
  private static final double LESS_PLAIN = 0.03;

  /** Notes further from every grid than this, in the mean, are written as they were played. */
  private static final double MOST_OFF = 0.09;

  /** A single note further from a grid than this was meant to be elsewhere; in quarter notes. */
  private static final double MOST_ONE_OFF = 0.12;

  /** Nobody is later than this and means the beat, in quarter notes. */
  private static final double LATEST = 0.2;

  /** A rest shorter than this is only breath between notes, in quarter notes. */
  private static final double BREATH = 0.45;

  private static final double ROUNDING = 1e-6;

  private PlainRhythm() {}

  /** The notes as one would write them, in the same beats. */
  public static List<Note> of(List<Note> played, Metre metre) {
    double quarters = metre.quartersPerBeat();
    double[] onsets = played.stream().mapToDouble(n -> n.onsetBeats() * quarters).toArray();
    List<Note> asPlayed = WrittenRhythm.of(played, metre);
    if (asPlayed.equals(played)) {
      return asPlayed;
    }
    int best = 0;
    double least = MOST_OFF;
    for (int grid : GRIDS) {
      if (grid != GRIDS[GRIDS.length - 1] && !standsOn(onsets, grid)) {
        continue;
      }
      double off = meanOff(onsets, grid, late(onsets, grid)) + (grid == GRIDS[0] ? 0 : LESS_PLAIN);
      if (off < least) {
        least = off;
        best = grid;
      }
    }
    return best == 0 ? asPlayed : onGrid(played, quarters, best, late(onsets, best));
  }

  private static double off(double quarter, int grid) {
    return quarter - Math.rint(quarter * grid) / grid;
  }

  private static double late(double[] onsets, int grid) {
    double[] offs = Arrays.stream(onsets).map(onset -> off(onset, grid)).sorted().toArray();
    double middle = offs[offs.length / 2];
    return Math.abs(middle) > LATEST ? 0 : middle;
  }

  /** Whether every note has a place of its own on the grid, and stands near it. */
  private static boolean standsOn(double[] onsets, int grid) {
    double late = late(onsets, grid);
    double last = Double.NEGATIVE_INFINITY;
    for (double onset : onsets) {
      double place = Math.rint((onset - late) * grid);
      if (Math.abs(off(onset - late, grid)) > MOST_ONE_OFF || place <= last) {
        return false;
      }
      last = place;
    }
    return true;
  }

  private static double meanOff(double[] onsets, int grid, double late) {
    return Arrays.stream(onsets)
        .map(onset -> Math.abs(off(onset - late, grid)))
        .average()
        .orElse(0);
  }

  private static List<Note> onGrid(List<Note> played, double quarters, int grid, double late) {
    double step = 1.0 / grid;
    List<Note> written = new ArrayList<>();
    double[] starts =
        played.stream()
            .mapToDouble(n -> Math.rint((n.onsetBeats() * quarters - late) * grid) / grid)
            .toArray();
    for (int i = 0; i < starts.length; i++) {
      double end = Math.rint((played.get(i).endBeats() * quarters - late) * grid) / grid;
      if (i + 1 < starts.length) {
        if (starts[i + 1] <= starts[i] + ROUNDING) {
          // Two notes on one place of the grid: it is too coarse after all, keep them in order.
          starts[i + 1] = starts[i] + step;
        }
        end = starts[i + 1] - end <= BREATH ? starts[i + 1] : Math.min(end, starts[i + 1]);
      }
      end = Math.max(end, starts[i] + step);
      written.add(
          new Note(starts[i] / quarters, (end - starts[i]) / quarters, played.get(i).pitch()));
    }
    return written;
  }
}
