package holdfast.bench.listening;

/**
 * How well a pitch track matches the truth, frame by frame, by mir_eval's melody metrics.
 *
 * @param voicingRecall share of the sung frames that were heard as sung
 * @param voicingFalseAlarm share of the silent frames that were heard as sung
 * @param rawPitchAccuracy share of the sung frames whose pitch (or guess) is within 50 cents
 * @param rawChromaAccuracy the same with octaves forgiven
 * @param overallAccuracy share of all frames with voicing and, where sung, pitch right
 */
public record FrameScore(
    double voicingRecall,
    double voicingFalseAlarm,
    double rawPitchAccuracy,
    double rawChromaAccuracy,
    double overallAccuracy) {

  private static final double TOLERANCE_CENTS = 50;

  /** Scores two tracks of equal length on one time grid. */
  public static FrameScore of(double[] referenceHz, double[] estimatedHz) {
    if (referenceHz.length != estimatedHz.length || referenceHz.length == 0) {
      throw new IllegalArgumentException(
          "tracks must be of one length, not " + referenceHz.length + ", " + estimatedHz.length);
    }
    int sung = 0;
    int silent = 0;
    int recalled = 0;
    int alarms = 0;
    int pitchRight = 0;
    int chromaRight = 0;
    int allRight = 0;
    for (int i = 0; i < referenceHz.length; i++) {
      boolean heard = estimatedHz[i] > 0;
      if (referenceHz[i] > 0) {
        sung++;
        recalled += heard ? 1 : 0;
        if (estimatedHz[i] != 0) {
          double cents = 1200 * Math.log(Math.abs(estimatedHz[i]) / referenceHz[i]) / Math.log(2);
          double folded = cents - 1200 * Math.floor(cents / 1200 + 0.5);
          boolean right = Math.abs(cents) < TOLERANCE_CENTS;
          pitchRight += right ? 1 : 0;
          chromaRight += Math.abs(folded) < TOLERANCE_CENTS ? 1 : 0;
          allRight += right && heard ? 1 : 0;
        }
      } else {
        silent++;
        alarms += heard ? 1 : 0;
        allRight += heard ? 0 : 1;
      }
    }
    return new FrameScore(
        share(recalled, sung),
        share(alarms, silent),
        share(pitchRight, sung),
        share(chromaRight, sung),
        share(allRight, referenceHz.length));
  }

  private static double share(int part, int whole) {
    return whole == 0 ? 0 : (double) part / whole;
  }
}
