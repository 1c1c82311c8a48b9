package holdfast.melody;

import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;

/**
 * How would one write down the rhythm that was played? Onsets and ends go to the nearest sixteenth
 * note, or to a third of a quarter note where that is clearly nearer. A line that stands on
 * divisions that can be written was written, and does not change. Common practice, no source;
 * nothing finer is meant at slow tempi.
 */
public final class WrittenRhythm {

  /** Parts of a quarter note that are taken as they are: 64ths, and tuplets with their halves. */
  private static final int[] EXACT = {16, 12, 24, 5, 10, 7, 14, 9, 18};

  private static final double ROUNDING_QUARTERS = 1e-6;

  /** A sixty-fourth note. */
  private static final double SHORTEST_QUARTERS = 1.0 / 16;

  private static final double SIXTEENTHS = 4;
  private static final double THIRDS = 3;

  /** A third has to be so much nearer than a sixteenth before we believe it. */
  private static final double DOUBT_OF_THIRDS = 1.5;

  private WrittenRhythm() {}

  /** The same notes as they would be written, none longer than to the next one's start. */
  public static List<Note> of(List<Note> played, Metre metre) {
    double quarters = metre.quartersPerBeat();
    boolean isWritten =
        played.stream()
            .allMatch(n -> exact(n.onsetBeats() * quarters) && exact(n.endBeats() * quarters));
    if (isWritten) {
      return List.copyOf(played);
    }
    double[] onsets = new double[played.size()];
    double earliest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < onsets.length; i++) {
      // Two that fall on one place, as a grace note and its main note, still follow one another.
      onsets[i] = Math.max(nearest(played.get(i).onsetBeats() * quarters), earliest);
      earliest = onsets[i] + SHORTEST_QUARTERS;
    }
    List<Note> written = new ArrayList<>();
    for (int i = 0; i < onsets.length; i++) {
      Note note = played.get(i);
      double end = Math.max(nearest(note.endBeats() * quarters), onsets[i] + 1 / SIXTEENTHS);
      double next = i + 1 < onsets.length ? onsets[i + 1] : end;
      double duration = Math.min(end, next) - onsets[i];
      written.add(new Note(onsets[i] / quarters, duration / quarters, note.pitch()));
    }
    return written;
  }

  private static double nearest(double quarters) {
    double sixteenth = Math.rint(quarters * SIXTEENTHS) / SIXTEENTHS;
    double third = Math.rint(quarters * THIRDS) / THIRDS;
    boolean clearly = Math.abs(quarters - third) * DOUBT_OF_THIRDS < Math.abs(quarters - sixteenth);
    return clearly ? third : sixteenth;
  }

  private static boolean exact(double quarters) {
    for (int parts : EXACT) {
      double count = quarters * parts;
      if (Math.abs(count - Math.rint(count)) < ROUNDING_QUARTERS * parts) {
        return true;
      }
    }
    return false;
  }
}
