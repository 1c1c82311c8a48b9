package holdfast.chart;

/**
 * One note or rest on paper; times in {@link NoteValue#TICKS}.
 *
 * @param start where it starts
 * @param ticks how long it sounds
 * @param value how it is written
 * @param tuplet how many of its kind fill the time of the next lower power of two; 1 for a plain
 *     note
 */
public record RhythmPiece(long start, long ticks, NoteValue value, int tuplet) {

  /** How many plain notes the tuplet takes the time of. */
  public int normal() {
    return Integer.highestOneBit(tuplet);
  }

  /** Where it ends. */
  public long end() {
    return start + ticks;
  }
}
