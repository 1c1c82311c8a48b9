package holdfast.motif;

/**
 * One way to account for a phrase: a treatment with its parameters, and how likely the phrase is
 * then.
 *
 * @param treatment what was done
 * @param log ln of prior times likelihood
 * @param map which pitches were meant
 * @param scale by how much the idea's times were stretched
 * @param backwards whether the idea's notes run backwards
 * @param aligner redoes the alignment on request
 * @param detail what the trade would add, or an empty word
 */
record Explanation(
    Treatment treatment,
    double log,
    PitchMap map,
    double scale,
    boolean backwards,
    Redo aligner,
    String detail) {

  /** Detail of an idea whose pitches come back in another rhythm. */
  static final String OWN_RHYTHM = "rhythm of its own";

  /** Finds the alignment again; few explanations are ever asked for theirs. */
  interface Redo {
    /** For each phrase note the idea note that it stands for, or −1. */
    int[] path();
  }
}
