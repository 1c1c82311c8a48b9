package holdfast.report.picture;

import holdfast.chart.MelodyBar;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A note or rest on its place along the staff; lengths in staff spaces from the staff's left end.
 *
 * @param bar the index of its bar
 * @param index its index in the bar
 * @param written what is written
 * @param position half spaces above the lowest line; empty for a rest
 * @param accidental the accidental to print, semitones up; a natural is 0
 * @param x the left edge of its head
 */
record PlacedNote(
    int bar,
    int index,
    MelodyBar.Written written,
    Optional<Integer> position,
    OptionalInt accidental,
    double x) {

  /** How wide a black head is, from Bravura's metadata. */
  static final double HEAD_WIDTH = 1.18;

  private static final double WHOLE_HEAD_WIDTH = 1.688;

  boolean isRest() {
    return position.isEmpty();
  }

  boolean hasStem() {
    return !isRest() && !written.piece().value().type().equals("whole");
  }

  double headWidth() {
    return written.piece().value().type().equals("whole") ? WHOLE_HEAD_WIDTH : HEAD_WIDTH;
  }

  /** Spaces below the top line of the staff: y as pictures count it. */
  double y() {
    return Lines.y(position.orElse(Lines.MIDDLE));
  }
}
