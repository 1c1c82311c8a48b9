package holdfast.carry;

/**
 * The pitches that a voice or an instrument is asked for, both ends included.
 *
 * @param low the lowest MIDI note number, sounding
 * @param high the highest, at least an octave above
 */
public record PitchRange(int low, int high) {

  /** The whole keyboard of MIDI. */
  public static final PitchRange ANY = new PitchRange(0, 127);

  /** In less room than this, in semitones, an idea could not always go anywhere. */
  public static final int LEAST_SEMITONES = 12;

  /** Checks that the range lies on the keyboard and has room. */
  public PitchRange {
    if (low < 0 || high > 127 || high - low < LEAST_SEMITONES) {
      throw new IllegalArgumentException(
          "a range spans an octave or more between 0 and 127, not " + low + " to " + high);
    }
  }

  /** Whether the pitch lies in the range. */
  public boolean contains(int pitch) {
    return pitch >= low && pitch <= high;
  }
}
