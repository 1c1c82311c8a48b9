package holdfast.report.picture;

import holdfast.chart.MelodyBar;
import holdfast.time.Metre;
import java.util.List;
import java.util.Optional;

/**
 * A line of music as one staff shows it.
 *
 * @param bars bar by bar, at least one; the chords in them stand above the staff
 * @param metre at the head
 * @param fifths sharps of the signature at the head, flats negative, at most 7 either way
 * @param clef at the head
 */
public record Staff(List<MelodyBar> bars, Metre metre, int fifths, Clef clef) {

  /** Copies, and checks the signature. */
  public Staff {
    bars = List.copyOf(bars);
    if (bars.isEmpty()) {
      throw new IllegalArgumentException("a staff has at least one bar");
    }
    if (Math.abs(fifths) > 7) {
      throw new IllegalArgumentException("no signature has " + fifths + " sharps or flats");
    }
  }

  /** Where a note stands, in half spaces above the lowest line; empty for a rest. */
  Optional<Integer> position(MelodyBar.Written written) {
    return written
        .note()
        .map(
            note -> {
              holdfast.theory.SpelledPitch pitch =
                  holdfast.theory.SpelledPitch.of(note.note().pitch(), note.name());
              return clef.position(7 * pitch.octave() + pitch.name().letter().step());
            });
  }
}
