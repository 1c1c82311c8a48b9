package holdfast.backing;

import java.util.ArrayList;
import java.util.List;

/**
 * When are the chords struck? Every chord sounds from its own first beat, so that a learner hears
 * each change where it is written. The rhythms are common practice, no source.
 */
final class Comping {

  private static final int HELD_VELOCITY = 62;
  private static final int AGAIN_VELOCITY = 46;

  private Comping() {}

  /**
   * A stroke of the hand within the time of one chord.
   *
   * @param at beats after the chord's start
   * @param beats how long it is held
   */
  private record Stroke(double at, double beats, int velocity) {}

  /**
   * The strokes of one chord.
   *
   * @param startBeat where the chord starts, in the beats of the events
   * @param beats how long it lasts
   * @param offBeat where in a beat its second eighth falls, 0.5 for straight
   * @param odd whether this is the second of two bars, for rhythms that take turns
   */
  static List<BackingEvent> chord(
      Feel feel, Voicing voicing, double startBeat, double beats, double offBeat, boolean odd) {
    List<BackingEvent> events = new ArrayList<>();
    for (Stroke stroke : strokes(feel, beats, offBeat, odd)) {
      for (int pitch : voicing.pitches()) {
        events.add(
            new BackingEvent(
                Part.CHORDS, startBeat + stroke.at(), stroke.beats(), pitch, stroke.velocity()));
      }
    }
    return events;
  }

  private static List<Stroke> strokes(Feel feel, double beats, double offBeat, boolean odd) {
    return switch (feel) {
      case PLAIN, DRONE -> List.of(new Stroke(0, beats, HELD_VELOCITY));
      case BALLAD -> row(beats, 0, beats >= 4 ? 2 * Math.floor(beats / 4) : beats);
      case SWING -> odd ? row(beats, 0, 2 + offBeat) : row(beats, 0, 1 + offBeat);
      case EVEN -> odd ? row(beats, 0, 2.5) : row(beats, 0, 1.5, 3);
    };
  }

  /**
   * Strokes at these beats, each held to the next; those at or past the chord's end are left out.
   */
  private static List<Stroke> row(double beats, double... at) {
    List<Stroke> strokes = new ArrayList<>();
    for (int i = 0; i < at.length && at[i] < beats; i++) {
      double end = i + 1 < at.length ? Math.min(beats, at[i + 1]) : beats;
      strokes.add(new Stroke(at[i], end - at[i], i == 0 ? HELD_VELOCITY : AGAIN_VELOCITY));
    }
    return strokes;
  }
}
