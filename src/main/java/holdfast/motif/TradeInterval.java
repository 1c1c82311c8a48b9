package holdfast.motif;

/** Distances in the words that musicians use for them. */
final class TradeInterval {

  private static final String[] NAMES = {
    "unison",
    "half step",
    "whole step",
    "minor third",
    "major third",
    "fourth",
    "tritone",
    "fifth",
    "minor sixth",
    "major sixth",
    "minor seventh",
    "major seventh"
  };

  private TradeInterval() {}

  /** "up a minor third", "down an octave", "up an octave and a fifth". */
  static String moved(int semitones) {
    int size = Math.abs(semitones);
    int octaves = size / 12;
    int rest = size % 12;
    StringBuilder words = new StringBuilder(semitones >= 0 ? "up " : "down ");
    if (octaves > 0) {
      words.append(octaves == 1 ? "an octave" : octaves + " octaves");
      if (rest > 0) {
        words.append(" and ");
      }
    }
    if (octaves == 0 || rest > 0) {
      words.append("a ").append(NAMES[rest]);
    }
    return words.toString();
  }
}
