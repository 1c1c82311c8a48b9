package holdfast.motif;

/** ln densities of the times of all steps of an alignment. */
final class Times {

  private final double[] table;
  private final double[] gains;

  /**
   * @param table in the aligner's cells
   * @param gains for each phrase note the most that a step to it can gain over new material
   */
  Times(double[] table, double[] gains) {
    this.table = table;
    this.gains = gains;
  }

  double[] table() {
    return table;
  }

  double gain(int phraseNote) {
    return gains[phraseNote];
  }
}
