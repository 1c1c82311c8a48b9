package holdfast.listening;

/**
 * What an instrument or a voice tells at one moment: a note began, or a note ended. Seconds count
 * from the start of the take.
 */
public sealed interface PlayEvent {

  /** When it happened, in seconds from the start of the take. */
  double seconds();

  /** Which note, as a sounding MIDI note number, C4 = 60. */
  int pitch();

  /**
   * A note began.
   *
   * @param seconds when, in seconds from the start of the take
   * @param pitch sounding MIDI note number 0 to 127
   * @param cents how far above (negative: below) that pitch, within ±100; 0 from a keyboard
   * @param loudness 0 to 1
   * @param confidence how sure the ear is, 0 to 1; 1 from a keyboard
   */
  record NoteOn(double seconds, int pitch, double cents, double loudness, double confidence)
      implements PlayEvent {

    /** A key went down. */
    public static NoteOn key(double seconds, int pitch, int velocity) {
      return new NoteOn(seconds, pitch, 0, velocity / 127.0, 1);
    }
  }

  /**
   * A note ended.
   *
   * @param seconds when, in seconds from the start of the take
   * @param pitch which note
   */
  record NoteOff(double seconds, int pitch) implements PlayEvent {}
}
