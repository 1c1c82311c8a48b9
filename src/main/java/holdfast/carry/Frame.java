package holdfast.carry;

import holdfast.harmony.ChordHere;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the idea starts from before single notes move: as it was said, or as a whole moved.
 *
 * @param source the statement that it comes from
 * @param base one pitch for each note, from which single notes move
 * @param kind what moved the whole
 * @param cost what moving the whole costs
 */
record Frame(Statement source, List<Integer> base, Kind kind, double cost) {

  /** What moved the whole idea. */
  enum Kind {
    /** Nothing. */
    STAYS,
    /** A step of the scale. */
    SCALE_STEP,
    /** The chord, moving in parallel. */
    PARALLEL,
    /** The range. */
    OCTAVE
  }

  private static final int OCTAVE = 12;
  private static final int TRITONE = 6;

  Frame {
    base = List.copyOf(base);
  }

  /** Every frame that a question allows, those of the last statement first. */
  static List<Frame> of(Question question, List<Slot> slots) {
    List<Frame> frames = new ArrayList<>();
    add(frames, question, question.previous(), slots, 0);
    if (!question.previous().notes().equals(question.idea().notes())) {
      add(frames, question, question.idea(), slots, Costs.BACK_TO_FIRST);
    }
    return frames;
  }

  private static void add(
      List<Frame> frames, Question question, Statement source, List<Slot> slots, double cost) {
    List<Integer> pitches = source.notes().stream().map(n -> n.pitch()).toList();
    boolean inRange = pitches.stream().allMatch(question.range()::contains);
    for (int octave : inRange ? new int[] {0} : new int[] {0, -OCTAVE, OCTAVE}) {
      List<Integer> there = pitches.stream().map(p -> p + octave).toList();
      Kind kind = octave == 0 ? Kind.STAYS : Kind.OCTAVE;
      double octaveCost = octave == 0 ? cost : cost + Costs.OCTAVE;
      frames.add(new Frame(source, there, kind, octaveCost));
      for (int steps : new int[] {-1, 1}) {
        List<Integer> sequence = new ArrayList<>();
        for (int i = 0; i < there.size(); i++) {
          sequence.add(scaleStep(there.get(i), steps, slots.get(i).scale()));
        }
        frames.add(new Frame(source, sequence, Kind.SCALE_STEP, octaveCost + Costs.SCALE_STEP));
      }
    }
    for (int semitones : parallel(question, source)) {
      frames.add(
          new Frame(
              source,
              pitches.stream().map(p -> p + semitones).toList(),
              Kind.PARALLEL,
              cost + Costs.PARALLEL + Costs.PARALLEL_SEMITONE * Math.abs(semitones)));
    }
  }

  /** The scale's note nearest to the pitch, then so many steps on; the pitch itself without one. */
  static int scaleStep(int pitch, int steps, PitchClassSet scale) {
    if (scale.isEmpty()) {
      return pitch;
    }
    int nearest = pitch;
    for (int away = 0; !scale.contains(nearest); away++) {
      // From between two notes of the scale the step starts at the one that lies behind it.
      nearest = scale.contains(pitch - steps * away) ? pitch - steps * away : pitch + steps * away;
    }
    int there = nearest + steps;
    while (!scale.contains(there)) {
      there += steps;
    }
    return there;
  }

  /** How far the chord has moved, both ways round, where it has kept its kind; else nothing. */
  private static List<Integer> parallel(Question question, Statement source) {
    Optional<ChordSymbol> from = source.harmony().flatMap(Harmony::chord);
    Optional<ChordSymbol> to =
        ChordHere.at(question.changes(), question.startBeat()).flatMap(c -> c.harmony().chord());
    if (from.isEmpty() || to.isEmpty() || !from.get().kind().equals(to.get().kind())) {
      return List.of();
    }
    int up = Math.floorMod(to.get().root().pitchClass() - from.get().root().pitchClass(), OCTAVE);
    if (up == 0) {
      return List.of();
    }
    return up == TRITONE ? List.of(up, -up) : List.of(up < TRITONE ? up : up - OCTAVE);
  }
}
