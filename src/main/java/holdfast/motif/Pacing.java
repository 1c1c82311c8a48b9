package holdfast.motif;

/**
 * Where an alignment may go as far as times, and notes left out and put in, are concerned: the same
 * for all pitches that may have been meant.
 *
 * @param times ln densities of the times of all steps, in the aligner's cells
 * @param edges what leaving out and putting in costs
 * @param ahead for each pair, at i·m + j, the most that all this can still come to after it
 * @param most the most that it can come to at all
 */
record Pacing(double[] times, Edges edges, double[] ahead, double most) {}
