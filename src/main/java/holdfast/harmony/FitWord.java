package holdfast.harmony;

/** How a phrase or a chorus sits in its chords, in a word that does not scold. */
public enum FitWord {
  /** Better than three of four expert solos, and said of whole choruses only. */
  RINGS("rings with the chords", 0.921, 0.903),
  /** As experts mostly play. */
  SITS("sits in the chords", 0.826, 0.834),
  /** Within what experts play, and said of longer lines only. */
  MOSTLY_SITS("mostly sits in the chords", 0.749, 0.778),
  /** Some notes rub. */
  RUBS("rubs in places", 0.70, 0.70),
  /** As lines sound that belong to other chords. */
  PULLS_AGAINST("pulls against the chords", 0, 0);

  private final String text;
  private final double from16Notes;
  private final double from64Notes;

  /**
   * The least scores of the word, for lines of 16 and of 64 notes: the upper quarter, lower quarter
   * and lower tenth of expert solos as they were measured (chord-fit calibration over the Weimar
   * Jazz Database), then a bound below the median of the same solos over wrong chords (.76, .75).
   */
  FitWord(String text, double from16Notes, double from64Notes) {
    this.text = text;
    this.from16Notes = from16Notes;
    this.from64Notes = from64Notes;
  }

  /** The least score that has this word, for a line between 16 notes (0) and 64 (1). */
  double leastScore(double length) {
    return from16Notes + length * (from64Notes - from16Notes);
  }

  /** As written in reports and JSON. */
  public String text() {
    return text;
  }
}
