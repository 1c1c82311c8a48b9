package holdfast.chart;

import java.util.List;

/**
 * The signs at a bar that say in which order the bars are played.
 *
 * @param opens whether a repeat sign opens at the bar's left
 * @param ending the passes whose ending starts at this bar, in increasing order; empty where none
 *     does
 * @param plays how often the repeat that closes at the bar's right is played in all, 2 or more; 0
 *     where none closes
 * @param doubleLine whether the bar line at the right is double, as at the end of a section
 */
public record RepeatSigns(boolean opens, List<Integer> ending, int plays, boolean doubleLine) {

  /** No sign: a bar between two plain lines. */
  public static final RepeatSigns NONE = new RepeatSigns(false, List.of(), 0, false);

  /** Nothing is repeated more often than this, lest a slip of the finger make a tune of hours. */
  public static final int MOST_PLAYS = 16;

  /** Checks the counts. */
  public RepeatSigns {
    ending = List.copyOf(ending);
    if (plays != 0 && (plays < 2 || plays > MOST_PLAYS)) {
      throw new IllegalArgumentException("a repeat is played 2 to " + MOST_PLAYS + " times");
    }
    for (int i = 0; i < ending.size(); i++) {
      int pass = ending.get(i);
      if (pass < 1 || pass > MOST_PLAYS || (i > 0 && pass <= ending.get(i - 1))) {
        throw new IllegalArgumentException("passes of an ending run upwards, not " + ending);
      }
    }
  }

  /** Whether a repeat closes at the bar's right. */
  public boolean closes() {
    return plays > 0;
  }

  /** Whether an ending starts at this bar. */
  public boolean startsEnding() {
    return !ending.isEmpty();
  }

  RepeatSigns opening() {
    return new RepeatSigns(true, ending, plays, doubleLine);
  }

  RepeatSigns startingEnding(List<Integer> passes) {
    return new RepeatSigns(opens, passes, plays, doubleLine);
  }

  RepeatSigns closing(int times) {
    return new RepeatSigns(opens, ending, times, doubleLine);
  }

  RepeatSigns doubled() {
    return new RepeatSigns(opens, ending, plays, true);
  }
}
