package holdfast.backing;

/**
 * The pitches that a player or singer uses, lowest and highest included.
 *
 * @param lowest MIDI note number 0 to 127
 * @param highest MIDI note number, not below the lowest
 */
public record PitchRange(int lowest, int highest) {

  /** Checks the order. */
  public PitchRange {
    if (lowest < 0 || highest > 127 || lowest > highest) {
      throw new IllegalArgumentException(
          "a range goes up, within 0 to 127, not from " + lowest + " to " + highest);
    }
  }

  /** Whether the pitch lies in the range. */
  public boolean contains(int pitch) {
    return pitch >= lowest && pitch <= highest;
  }
}
