package holdfast.time;

/**
 * Which beat is heard at which moment. Moments are those of {@link System#nanoTime}; beats are
 * counted from the first beat of the first bar, so that a count-in has negative beats. Both
 * directions go forward, and each undoes the other to within rounding.
 */
public interface BeatClock {

  /** The beat that is heard at this moment, with its fraction. */
  double beatAt(long nanoTime);

  /** The moment at which this beat is heard; for a beat yet to come, the best forecast. */
  long nanoTimeAt(double beat);

  /** A clock without a sound device: the tempo map's second 0 falls on the given moment. */
  static BeatClock of(TempoMap map, long nanoTimeOfSecondZero) {
    return new BeatClock() {
      @Override
      public double beatAt(long nanoTime) {
        return map.beatAt((nanoTime - nanoTimeOfSecondZero) / 1e9);
      }

      @Override
      public long nanoTimeAt(double beat) {
        return nanoTimeOfSecondZero + Math.round(map.secondsAt(beat) * 1e9);
      }
    };
  }
}
