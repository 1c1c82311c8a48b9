package holdfast.backing;

import java.util.ArrayList;
import java.util.List;

/**
 * The drums: light, so that they carry and do not lead. Drum numbers are General MIDI's percussion
 * key map; the patterns are common practice, no source.
 */
final class TimeKeeping {

  private static final int SIDE_STICK = 37;
  private static final int CLOSED_HI_HAT = 42;
  private static final int PEDAL_HI_HAT = 44;
  private static final int RIDE = 51;

  /** A drum rings as it will; the length only says when its note ends. */
  private static final double STROKE_BEATS = 0.2;

  private static final int ACCENT = 92;
  private static final int COUNT = 72;
  private static final int SOFT = 58;
  private static final int SOFTER = 42;

  private TimeKeeping() {}

  /**
   * One bar, from beat 0.
   *
   * @param offBeat where in a beat its second eighth falls, 0.5 for straight
   * @param odd whether this is the second of two bars, for rhythms that take turns
   */
  static List<BackingEvent> bar(Feel feel, Pulse pulse, double offBeat, boolean odd) {
    List<BackingEvent> strokes = new ArrayList<>();
    switch (feel) {
      case DRONE -> {}
      case PLAIN -> answers(strokes, pulse, SOFT);
      case BALLAD -> {
        answers(strokes, pulse, SOFT);
        for (int beat = 0; beat < pulse.beats(); beat++) {
          strokes.add(stroke(beat, RIDE, SOFTER));
        }
      }
      case SWING -> {
        answers(strokes, pulse, SOFT);
        for (int beat = 0; beat < pulse.beats(); beat++) {
          strokes.add(stroke(beat, RIDE, SOFT));
          if (pulse.answers().contains(beat)) {
            strokes.add(stroke(beat + offBeat, RIDE, SOFTER));
          }
        }
      }
      case EVEN -> even(strokes, pulse, odd);
    }
    return strokes;
  }

  private static void answers(List<BackingEvent> strokes, Pulse pulse, int velocity) {
    for (int beat : pulse.answers()) {
      strokes.add(stroke(beat, PEDAL_HI_HAT, velocity));
    }
  }

  private static void even(List<BackingEvent> strokes, Pulse pulse, boolean odd) {
    for (int eighth = 0; eighth < 2 * pulse.beats(); eighth++) {
      strokes.add(stroke(eighth / 2.0, CLOSED_HI_HAT, eighth % 2 == 0 ? SOFT : SOFTER));
    }
    double[] crossing = odd ? new double[] {1, 2.5} : new double[] {0, 1.5, 3};
    if (pulse.beats() == 4) {
      for (double beat : crossing) {
        strokes.add(stroke(beat, SIDE_STICK, SOFT));
      }
    } else {
      pulse.starts().forEach(beat -> strokes.add(stroke(beat, SIDE_STICK, SOFT)));
    }
  }

  /**
   * The count before the first bar, on beats below 0: every beat of the last bar, and in a bar
   * before it only the beats that its groups start on.
   *
   * @param bars how many bars, 0 or more
   */
  static List<BackingEvent> countIn(Pulse pulse, int bars) {
    List<BackingEvent> strokes = new ArrayList<>();
    for (int bar = bars; bar >= 1; bar--) {
      for (int beat = 0; beat < pulse.beats(); beat++) {
        if (bar == 1 || pulse.starts().contains(beat)) {
          double at = beat - (double) bar * pulse.beats();
          strokes.add(stroke(at, SIDE_STICK, beat == 0 ? ACCENT : COUNT));
        }
      }
    }
    return strokes;
  }

  private static BackingEvent stroke(double at, int drum, int velocity) {
    return new BackingEvent(Part.TIME, at, STROKE_BEATS, drum, velocity);
  }
}
