package holdfast.session;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * Someone who plays a written line as a person does: a little early, a little late, never twice
 * equally loud, letting go of each note before the next. Stands in for a student where there is no
 * instrument.
 *
 * @param seed the same seed plays the same take again
 */
public record DemoStudent(long seed) {

  /**
   * Spread of onsets about the beat, in seconds. Keyboard players who keep time with a
   * accompaniment scatter by 10 to 30 ms (common practice, no source).
   */
  static final double ONSET_SPREAD_SECONDS = 0.018;

  /** Part of its written length that a note sounds on average; the rest is the finger lifting. */
  private static final double ARTICULATION = 0.9;

  private static final double ARTICULATION_SPREAD = 0.04;
  private static final int TOUCH = 74;
  private static final int TOUCH_SPREAD = 9;

  /** Plays the line at the tempo, in seconds of the take. */
  public List<PlayedNote> play(List<Note> line, TempoMap tempo) {
    RandomGenerator chance = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    List<PlayedNote> played = new ArrayList<>(line.size());
    double earliest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < line.size(); i++) {
      Note note = line.get(i);
      double written = tempo.secondsAt(note.onsetBeats());
      double onset =
          Math.max(written + chance.nextGaussian() * ONSET_SPREAD_SECONDS, earliest + 0.01);
      double sounding = ARTICULATION + chance.nextGaussian() * ARTICULATION_SPREAD;
      double length = (tempo.secondsAt(note.endBeats()) - written) * Math.min(sounding, 0.99);
      int velocity = (int) Math.round(TOUCH + chance.nextGaussian() * TOUCH_SPREAD);
      played.add(
          PlayedNote.key(
              onset, Math.max(length, 0.03), note.pitch(), Math.max(30, Math.min(112, velocity))));
      earliest = onset;
    }
    return List.copyOf(played);
  }
}
