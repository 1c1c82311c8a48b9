package holdfast.chart;

import java.util.List;

/** What stands between two bar lines. */
public sealed interface BarContents {

  /** How many bars of the tune this stands for: 1, or 2 for the two-bar repeat sign. */
  default int barCount() {
    return 1;
  }

  /**
   * Chords with their beats.
   *
   * @param chords at least one; only the first may go on from the bar before
   */
  record Chords(List<TimedChord> chords) implements BarContents {

    /** Checks that there are chords, and that all but the first are new ones. */
    public Chords {
      chords = List.copyOf(chords);
      if (chords.isEmpty()) {
        throw new IllegalArgumentException("a bar holds at least one chord");
      }
      if (chords.stream().skip(1).anyMatch(c -> c.harmony().isEmpty())) {
        throw new IllegalArgumentException("only a bar's first chord can go on from before");
      }
    }

    /** How long all chords last together, in beats. */
    public double beats() {
      return chords.stream().mapToDouble(TimedChord::beats).sum();
    }
  }

  /** The sign for one bar more of the same: the bar before, as played, once again. */
  record OneBarRepeat() implements BarContents {}

  /** The sign across two bars: the two bars before, as played, once again. */
  record TwoBarRepeat() implements BarContents {

    @Override
    public int barCount() {
      return 2;
    }
  }
}
