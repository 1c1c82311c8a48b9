package holdfast.listening.pitch;

/**
 * What was seen in one frame: its candidates in order of falling pitch, and the frame as a whole.
 * Frames are kept in rings and filled again and again, so that nothing is allocated on the way.
 */
final class FrameView {

  /** Decibels of a frame in which nothing repeats. */
  static final float NOTHING_DB = -120;

  int count;
  final float[] cents = new float[FrameAnalysis.MOST];

  /** Logarithm of the probability of each candidate among the candidates. */
  final float[] logMass = new float[FrameAnalysis.MOST];

  /** Clarity of each, 0 to 1. */
  final float[] clarity = new float[FrameAnalysis.MOST];

  /** Level in decibels of each one's harmonics alone, without what sounds between them. */
  final float[] harmonicDb = new float[FrameAnalysis.MOST];

  /** The likeliest candidate. */
  int favourite;

  /** Amplitude between the favourite's harmonics against that on them, 0 to 1. */
  float between;

  /** Level of the whole frame, decibels under full scale. */
  float levelDb;

  /** Level over the room's steady noise, in decibels. */
  float aboveNoiseDb;

  /** Share of the power above 3 kHz: high in an s or a breath. */
  float brightness;

  /** Share of the spectrum that is new against 15 ms before, 0 to 1. */
  float flux;

  float favouriteCents() {
    return count == 0 ? 0 : cents[favourite];
  }

  float favouriteClarity() {
    return count == 0 ? 0 : clarity[favourite];
  }

  float favouriteDb() {
    return count == 0 ? NOTHING_DB : Math.max(NOTHING_DB, harmonicDb[favourite]);
  }
}
