package holdfast.listening;

import holdfast.melody.Note;
import holdfast.time.TempoMap;

/**
 * One note as it was played or sung: in seconds, with all that the ear can tell of it.
 *
 * @param onsetSeconds when it started, in seconds from the start of the take
 * @param durationSeconds how long it sounded, in seconds, more than 0
 * @param pitch the nearest MIDI note number 0 to 127, sounding, C4 = 60
 * @param cents how far above (or, negative, below) that pitch it was, within ±100; 0 from a
 *     keyboard
 * @param loudness 0 (silent) to 1 (as loud as the input can be); a keyboard's velocity / 127
 * @param confidence how sure the ear is that this note was played, 0 to 1; 1 from a keyboard
 */
public record PlayedNote(
    double onsetSeconds,
    double durationSeconds,
    int pitch,
    double cents,
    double loudness,
    double confidence) {

  /** Checks every range that the parameters promise. */
  public PlayedNote {
    if (!Double.isFinite(onsetSeconds)) {
      throw new IllegalArgumentException("a note's onset must be finite, not " + onsetSeconds);
    }
    if (!(durationSeconds > 0) || !Double.isFinite(durationSeconds)) {
      throw new IllegalArgumentException(
          "a note's duration must be more than 0 s, not " + durationSeconds);
    }
    if (pitch < 0 || pitch > 127) {
      throw new IllegalArgumentException("a note's pitch must be 0 to 127, not " + pitch);
    }
    if (!(Math.abs(cents) <= 100)) {
      throw new IllegalArgumentException("a note's cents must be within ±100, not " + cents);
    }
    if (!(loudness >= 0 && loudness <= 1)) {
      throw new IllegalArgumentException("a note's loudness must be 0 to 1, not " + loudness);
    }
    if (!(confidence >= 0 && confidence <= 1)) {
      throw new IllegalArgumentException("a note's confidence must be 0 to 1, not " + confidence);
    }
  }

  /** A note of a keyboard: in tune by nature and certain. */
  public static PlayedNote key(
      double onsetSeconds, double durationSeconds, int pitch, int velocity) {
    return new PlayedNote(onsetSeconds, durationSeconds, pitch, 0, velocity / 127.0, 1);
  }

  /** Shorter than this no note can be written; in beats. */
  private static final double SHORTEST_BEATS = 1e-6;

  /** The note where it meets a chart: in the beats that its seconds become. */
  public Note inBeats(TempoMap beats) {
    double from = beats.beatAt(onsetSeconds);
    double to = beats.beatAt(endSeconds());
    return new Note(from, Math.max(to - from, SHORTEST_BEATS), pitch, cents);
  }

  /** When it stopped sounding, in seconds from the start of the take. */
  public double endSeconds() {
    return onsetSeconds + durationSeconds;
  }

  /** The same note so many seconds later. */
  public PlayedNote later(double seconds) {
    return new PlayedNote(
        onsetSeconds + seconds, durationSeconds, pitch, cents, loudness, confidence);
  }
}
