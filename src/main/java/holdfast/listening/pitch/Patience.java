package holdfast.listening.pitch;

/**
 * How long the ear waits before it says what it has heard. All lengths are in frames of {@link
 * Frames#HOP_SECONDS}.
 *
 * @param path by how much the pitch path looks ahead before it decides a frame
 * @param vibrato by how much a shake is looked for ahead
 * @param end after how long the end of a note is told
 * @param begin how long a note must stand before its beginning is told
 * @param noteOutOfGap what a note after a rest costs, in nats: less is quicker, and oftener wrong
 * @param newNote what a note in the middle of singing costs, in nats, less what speaks for an
 *     attack
 */
record Patience(int path, int vibrato, int end, int begin, double noteOutOfGap, double newNote) {

  /** A first guess while the note sounds, in under 50 ms; a few are taken back. */
  static final Patience EARLY = new Patience(1, 0, 20, 2, 1.5, 15);

  /**
   * Live, but sure: 0.2 s after its onset a note is told. The path outlasts a stop consonant (80
   * ms) and the shake of a voice is seen by a third of a swing ahead.
   */
  static final Patience SETTLED = new Patience(16, 12, 20, 8, 4, 20);

  /** On a file: 0.3 s for the path, longer than any consonant, and half a swing of vibrato. */
  static final Patience FILE = new Patience(60, 25, 80, 80, 4, 20);
}
