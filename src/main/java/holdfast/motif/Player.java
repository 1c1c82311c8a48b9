package holdfast.motif;

/**
 * How exactly a kind of player can be taken at their notes: the spread of human timing and the
 * chance of a wrong note.
 *
 * <p>Timing is a share of the idea's mean time between onsets, since human timing spread grows with
 * the interval that is timed (Weber's law for tempo, from memory: 3 to 6 %). At 60 beats a minute
 * and a mean of 0.6 s, the keyboard's 0.05 is 30 ms between two onsets (20 ms each, in quadrature),
 * the voice's 0.10 is 60 ms (45 ms each).
 */
public enum Player {
  /** Keys struck: exact pitch, small timing spread, now and then a neighbouring key. */
  KEYBOARD(0.05, 0, 0.008, 0.004, 0.002, 0.006),
  /**
   * Sung: pitch spread of 30 cents about each note puts one note in ten on a neighbouring semitone
   * (two-sided normal tail beyond 50 cents: 0.096), and the idea itself was often sung too.
   */
  VOICE(0.10, 30, 0.11, 0.008, 0.004, 0.015),
  /** Nobody said: between the two. */
  UNKNOWN(0.07, 30, 0.03, 0.003, 0.003, 0.012);

  private final double timingShare;
  private final double spreadCents;
  private final double semitoneSlip;
  private final double toneSlip;
  private final double wildSlip;
  private final double extraOrMissing;

  Player(
      double timingShare,
      double spreadCents,
      double semitoneSlip,
      double toneSlip,
      double wildSlip,
      double extraOrMissing) {
    this.timingShare = timingShare;
    this.spreadCents = spreadCents;
    this.semitoneSlip = semitoneSlip;
    this.toneSlip = toneSlip;
    this.wildSlip = wildSlip;
    this.extraOrMissing = extraOrMissing;
  }

  /** Standard deviation of a time between onsets, as a share of the idea's mean one. */
  double timingShare() {
    return timingShare;
  }

  /** Standard deviation of a note about the one that was meant, in cents; 0 for keys. */
  double spreadCents() {
    return spreadCents;
  }

  /** Chance that a note comes out a semitone off, either side together. */
  double semitoneSlip() {
    return semitoneSlip;
  }

  /** Chance that a note comes out a whole tone off, either side together. */
  double toneSlip() {
    return toneSlip;
  }

  /** Chance that a note comes out anywhere. */
  double wildSlip() {
    return wildSlip;
  }

  /** Chance, a note, that it is left out by mistake, and that a stray one is put in. */
  double extraOrMissing() {
    return extraOrMissing;
  }
}
