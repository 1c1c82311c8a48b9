package holdfast.backing;

import holdfast.melody.Note;

/**
 * One note of the backing.
 *
 * @param part who plays it
 * @param onsetBeats when, in beats from a zero that the owner names
 * @param durationBeats how long, in beats, more than 0
 * @param pitch MIDI note number 0 to 127, C4 = 60; of the time part, the General MIDI drum
 * @param velocity how hard, 1 to 127
 */
public record BackingEvent(
    Part part, double onsetBeats, double durationBeats, int pitch, int velocity) {

  /** Checks the ranges. */
  public BackingEvent {
    if (!Double.isFinite(onsetBeats)) {
      throw new IllegalArgumentException("an onset must be a finite beat, not " + onsetBeats);
    }
    if (!(durationBeats > 0) || !Double.isFinite(durationBeats)) {
      throw new IllegalArgumentException(
          "a note must last more than 0 beats, not " + durationBeats);
    }
    if (pitch < 0 || pitch > 127) {
      throw new IllegalArgumentException("a pitch must be 0 to 127, not " + pitch);
    }
    if (velocity < 1 || velocity > 127) {
      throw new IllegalArgumentException("a velocity must be 1 to 127, not " + velocity);
    }
  }

  /** A note of a written line, played so hard. */
  public static BackingEvent ofLine(Note note, int velocity) {
    return new BackingEvent(
        Part.LINE, note.onsetBeats(), note.durationBeats(), note.pitch(), velocity);
  }

  /** The same note so many beats later. */
  public BackingEvent later(double beats) {
    return new BackingEvent(part, onsetBeats + beats, durationBeats, pitch, velocity);
  }

  /** The same note, let go at this beat. */
  BackingEvent until(double beat) {
    return new BackingEvent(part, onsetBeats, beat - onsetBeats, pitch, velocity);
  }

  /** Where it ends, in the same beats as its onset. */
  public double endBeats() {
    return onsetBeats + durationBeats;
  }
}
