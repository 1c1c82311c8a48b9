package holdfast.phrase;

/**
 * How unlikely is it that these notes were meant as one phrase? Whoever knows the idea answers;
 * {@link PhraseRevision} asks.
 */
@FunctionalInterface
public interface SegmentCost {

  /** The cost where nothing is known of an idea: any notes may make a phrase. */
  SegmentCost NOTHING_KNOWN = (from, to) -> 0;

  /**
   * Minus the natural logarithm of how much likelier the notes are as one whole phrase than as so
   * many notes of free play: negative for a good restatement, 0 for what is nothing in particular,
   * positive for what no one would play as a phrase. It must not weigh the rests around the phrase;
   * those are weighed elsewhere.
   *
   * <p>For each {@code from}, calls come with increasing {@code to}.
   *
   * @param from index in the take of the first note
   * @param to index of the note after the last
   */
  double of(int from, int to);
}
