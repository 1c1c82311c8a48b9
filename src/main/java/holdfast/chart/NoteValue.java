package holdfast.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A note value as it is written: plain or with one dot.
 *
 * @param type its name in MusicXML
 * @param dotted whether a dot makes it half as long again
 * @param ticks its length in {@link #TICKS} to the quarter note
 */
public record NoteValue(String type, boolean dotted, long ticks) {

  /** Divides by 64ths, and by thirds, fifths, sevenths and ninths of them down to 16ths. */
  public static final long TICKS = 10080;

  private static final List<String> TYPES =
      List.of("whole", "half", "quarter", "eighth", "16th", "32nd", "64th", "128th");

  private static final List<NoteValue> LONGEST_FIRST = longestFirst();

  private static List<NoteValue> longestFirst() {
    List<NoteValue> values = new ArrayList<>();
    long ticks = 4 * TICKS;
    for (String type : TYPES) {
      if (ticks % 2 == 0) {
        values.add(new NoteValue(type, true, ticks * 3 / 2));
      }
      values.add(new NoteValue(type, false, ticks));
      ticks /= 2;
    }
    return List.copyOf(values);
  }

  /** The values that together last so long, the longest first; what is shorter than any is lost. */
  static List<NoteValue> filling(long ticks) {
    List<NoteValue> filling = new ArrayList<>();
    long left = ticks;
    for (NoteValue value : LONGEST_FIRST) {
      while (left >= value.ticks()) {
        filling.add(value);
        left -= value.ticks();
      }
    }
    return filling;
  }

  /** How many beams or flags it has. */
  public int beams() {
    return Math.max(0, TYPES.indexOf(type) - TYPES.indexOf("quarter"));
  }
}
