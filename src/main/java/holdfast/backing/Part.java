package holdfast.backing;

/** A part of the backing, which can be muted by itself. */
public enum Part {
  /** The one who comps. */
  CHORDS,
  /** The bass line. */
  BASS,
  /** The light time-keeping of the drums, and the count-in. */
  TIME,
  /** Someone who plays a melody over the backing: the demo student, or a coach with an idea. */
  LINE
}
