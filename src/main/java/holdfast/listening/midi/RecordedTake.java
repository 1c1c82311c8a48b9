package holdfast.listening.midi;

import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;

/**
 * A take as a MIDI file holds it: who plays what and when, and what the file knows of bars.
 * Positions are quarter notes and seconds from the start of the file.
 *
 * @param source the file, as told to people
 * @param title of the piece, where the file names one
 * @param parts each channel of each track that plays at least one note, in the order of the file
 * @param tempo where quarter notes fall in seconds
 * @param tempoIsWritten whether the file names any tempo; without, {@code tempo} is the default of
 *     120, which says nothing about the player
 * @param metres time signatures in order, empty where none is written
 * @param keys key signatures in order, empty where none is written
 * @param marks markers, cue points and texts in order
 * @param remarks what was amiss in the file and could be mended, a sentence each
 */
public record RecordedTake(
    String source,
    Optional<String> title,
    List<TakePart> parts,
    TempoMap tempo,
    boolean tempoIsWritten,
    List<MetreChange> metres,
    List<KeyChange> keys,
    List<Mark> marks,
    List<String> remarks) {

  /**
   * A time signature.
   *
   * @param quarters where it starts to hold
   */
  public record MetreChange(double quarters, Metre metre) {}

  /**
   * A key signature.
   *
   * @param quarters where it starts to hold
   * @param fifths sharps, or flats when negative, −7 to 7
   * @param minor whether the file calls it minor
   */
  public record KeyChange(double quarters, int fifths, boolean minor) {

    /** Checks the number of sharps and flats. */
    public KeyChange {
      if (Math.abs(fifths) > 7) {
        throw new IllegalArgumentException("a key has at most 7 sharps or flats, not " + fifths);
      }
    }
  }

  /** What kind of text a mark is. */
  public enum MarkKind {
    /** Names a place in the piece: a rehearsal letter, a section, a chord. */
    MARKER,
    /** Says what happens here. */
    CUE,
    /** Any other text. */
    TEXT
  }

  /**
   * A text at a place.
   *
   * @param quarters where
   * @param seconds when
   */
  public record Mark(double quarters, double seconds, MarkKind kind, String text) {}

  /** Copies. */
  public RecordedTake {
    parts = List.copyOf(parts);
    metres = List.copyOf(metres);
    keys = List.copyOf(keys);
    marks = List.copyOf(marks);
    remarks = List.copyOf(remarks);
  }

  /** The metre at the start, where the file writes one. */
  public Optional<Metre> openingMetre() {
    return metres.stream().findFirst().map(MetreChange::metre);
  }

  /** When the last note ends, in seconds; 0 without notes. */
  public double endSeconds() {
    return parts.stream()
        .flatMap(part -> part.notes().stream())
        .mapToDouble(note -> note.endSeconds())
        .max()
        .orElse(0);
  }
}
