package holdfast.backing;

import holdfast.theory.ChordSymbol;
import holdfast.theory.Degree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What does the bass play? Each chord's bass note from its first beat, and where the feel moves,
 * its fifth on the weaker pulse; at the end of each four bars a step into what comes. Common
 * practice, no source.
 */
final class BassLine {

  /** E1, the lowest string of the double bass. */
  static final int LOWEST = 28;

  /** A2: a fourth below the lowest note of the chords, so that nothing close sounds down there. */
  static final int HIGHEST = 45;

  /** C2, where the instrument speaks best. */
  private static final int CENTRE = 36;

  /** A semitone of movement weighs as much as four away from the centre. */
  private static final double CENTRE_COST = 0.25;

  private static final int STRONG = 78;
  private static final int WEAK = 66;

  private BassLine() {}

  /** Where this chord's bass note can lie. */
  static List<ShapedVoicing> choices(ChordSymbol chord) {
    List<ShapedVoicing> choices = new ArrayList<>();
    int pitchClass = chord.lowest().pitchClass();
    for (int pitch = LOWEST + Math.floorMod(pitchClass - LOWEST, 12);
        pitch <= HIGHEST;
        pitch += 12) {
      choices.add(
          new ShapedVoicing(new Voicing(List.of(pitch)), CENTRE_COST * Math.abs(pitch - CENTRE)));
    }
    return choices;
  }

  /**
   * The bass under one chord.
   *
   * @param pitch the chord's bass note
   * @param startBeat where the chord starts, in the beats of the events
   * @param beats how long it lasts
   * @param pulse the beats within the chord where a group of the bar starts, in beats after its
   *     start
   * @param leadsTo the bass note that comes after, where the line is to step into it
   */
  static List<BackingEvent> chord(
      Feel feel,
      ChordSymbol chord,
      int pitch,
      double startBeat,
      double beats,
      List<Double> pulse,
      OptionalInt leadsTo) {
    List<Double> onsets = new ArrayList<>(List.of(0.0));
    if (feel == Feel.BALLAD || feel == Feel.SWING || feel == Feel.EVEN) {
      pulse.stream().filter(beat -> beat > 0).forEach(onsets::add);
    }
    List<BackingEvent> events = new ArrayList<>();
    int other = other(chord, pitch);
    boolean eighths = feel == Feel.EVEN;
    for (int i = 0; i < onsets.size(); i++) {
      double at = onsets.get(i);
      double end = i + 1 < onsets.size() ? onsets.get(i + 1) : beats;
      int here = i % 2 == 0 ? pitch : other;
      if (eighths && end - at >= 2) {
        // Long and short, the short one already on the note to come.
        double turn = end - 0.5;
        events.add(note(startBeat + at, turn - at, here, i == 0 ? STRONG : WEAK));
        events.add(note(startBeat + turn, 0.5, i % 2 == 0 ? other : pitch, WEAK));
      } else {
        events.add(note(startBeat + at, end - at, here, i == 0 ? STRONG : WEAK));
      }
    }
    return leadsTo.isPresent() && feel != Feel.PLAIN && feel != Feel.DRONE && beats >= 2
        ? stepping(events, startBeat + beats, pitch, leadsTo.getAsInt())
        : events;
  }

  private static BackingEvent note(double onset, double beats, int pitch, int velocity) {
    return new BackingEvent(Part.BASS, onset, beats, pitch, velocity);
  }

  /** The last beat goes to the note a semitone from the one to come, from the side we are on. */
  private static List<BackingEvent> stepping(
      List<BackingEvent> events, double end, int from, int to) {
    if (to == from) {
      return events;
    }
    List<BackingEvent> line = new ArrayList<>();
    for (BackingEvent event : events) {
      if (event.onsetBeats() < end - 1) {
        double beats = Math.min(event.durationBeats(), end - 1 - event.onsetBeats());
        line.add(note(event.onsetBeats(), beats, event.pitch(), event.velocity()));
      }
    }
    int step = from < to ? to - 1 : to + 1;
    line.add(note(end - 1, 1, Math.max(LOWEST, Math.min(HIGHEST, step)), WEAK));
    return line;
  }

  /** The chord's fifth, below where there is room; over a foreign bass that bass again. */
  private static int other(ChordSymbol chord, int pitch) {
    if (chord.bass().isPresent()) {
      return pitch;
    }
    Optional<Degree> fifth =
        chord.kind().degrees().stream().filter(degree -> degree.number() == 5).findFirst();
    int up = fifth.map(Degree::semitones).orElse(12);
    int below = pitch + up - 12;
    if (below < pitch && below >= LOWEST) {
      return below;
    }
    return pitch + up <= HIGHEST ? pitch + up : pitch;
  }
}
