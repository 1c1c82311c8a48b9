package holdfast.listening.midi;

/** What a tick of a file is: a part of a quarter note, or a part of a second. */
sealed interface Division {

  /** So many ticks to a quarter note (PPQ), 1 to 32767; tempo says how long that is. */
  record TicksPerQuarter(int ticks) implements Division {}

  /** So many ticks to a second (SMPTE frames times ticks to a frame), whatever the tempo. */
  record TicksPerSecond(double ticks) implements Division {}

  /**
   * The division word of a header, by Standard MIDI Files 1.0: bit 15 clear is PPQ; set, the high
   * byte is minus the frames a second (24, 25, 29 for 30 drop-frame, 30) and the low byte the ticks
   * in a frame.
   *
   * @throws IllegalArgumentException saying what is wrong with the word
   */
  static Division of(int word) {
    if ((word & 0x8000) == 0) {
      if (word == 0) {
        throw new IllegalArgumentException("the header says 0 ticks to a quarter note");
      }
      return new TicksPerQuarter(word);
    }
    int frames = -(byte) (word >> 8);
    int perFrame = word & 0xFF;
    double framesPerSecond =
        switch (frames) {
          case 24, 25, 30 -> frames;
          case 29 -> 30_000 / 1001.0;
          default ->
              throw new IllegalArgumentException(
                  "the header counts " + frames + " SMPTE frames a second, not 24, 25, 29 or 30");
        };
    if (perFrame == 0) {
      throw new IllegalArgumentException("the header says 0 ticks to an SMPTE frame");
    }
    return new TicksPerSecond(framesPerSecond * perFrame);
  }
}
