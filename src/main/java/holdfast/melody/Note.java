package holdfast.melody;

/**
 * One note of a melodic line as a musician counts it: in beats, on a pitch of the keyboard.
 *
 * @param onsetBeats where it starts, in beats from a zero that the owner names (the first bar of a
 *     take, or the first beat of an idea's bar); negative before it, as a pick-up is
 * @param durationBeats how long it sounds, in beats, more than 0
 * @param pitch MIDI note number 0 to 127, sounding, C4 = 60
 * @param cents how far above (or, negative, below) that pitch it was sung, within ±100; 0 where it
 *     is written, or came from a keyboard
 */
public record Note(double onsetBeats, double durationBeats, int pitch, double cents) {

  /** A note as it is written, or as a keyboard plays it: in tune. */
  public Note(double onsetBeats, double durationBeats, int pitch) {
    this(onsetBeats, durationBeats, pitch, 0);
  }

  /** Checks that times are finite, that the note has a length and that the pitch exists. */
  public Note {
    if (!Double.isFinite(onsetBeats)) {
      throw new IllegalArgumentException("a note's onset must be a finite beat, not " + onsetBeats);
    }
    if (!(durationBeats > 0) || !Double.isFinite(durationBeats)) {
      throw new IllegalArgumentException(
          "a note's duration must be more than 0 beats, not " + durationBeats);
    }
    if (pitch < 0 || pitch > 127) {
      throw new IllegalArgumentException("a note's pitch must be 0 to 127, not " + pitch);
    }
    if (!(Math.abs(cents) <= 100)) {
      throw new IllegalArgumentException("a note's cents must be within ±100, not " + cents);
    }
  }

  /** Where it stops sounding, in the same beats as its onset. */
  public double endBeats() {
    return onsetBeats + durationBeats;
  }
}
