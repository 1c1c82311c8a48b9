package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** What a judge asks of the same few scales again and again, worked out once. */
final class Scales {

  /** Cheap to make, and hardly ever so many: beyond it the memory starts anew. */
  private static final int MOST = 4096;

  private static final int PITCH_CLASSES = 12;

  private record Pair(PitchClassSet scale, PitchClassSet beside) {}

  private final Map<Pair, Ladder> ladders = new ConcurrentHashMap<>();
  private final Map<PitchClassSet, List<Double>> steps = new ConcurrentHashMap<>();
  private final Map<PitchClassSet, List<Double>> firsts = new ConcurrentHashMap<>();

  /** {@link Ladder#of}. */
  Ladder ladder(PitchClassSet scale) {
    return alongside(scale, scale);
  }

  /** A scale's ladder {@link Ladder#alongside} another one's. */
  Ladder alongside(PitchClassSet scale, PitchClassSet other) {
    Pair pair = new Pair(scale, other);
    Ladder known = ladders.get(pair);
    if (known == null) {
      if (ladders.size() > MOST) {
        ladders.clear();
      }
      // Alongside itself a ladder is as it was.
      known = Ladder.of(scale).alongside(Ladder.of(other));
      ladders.put(pair, known);
    }
    return known;
  }

  /** {@link Background#allSteps} from this pitch. */
  double allSteps(PitchClassSet scale, int from) {
    return steps
        .computeIfAbsent(scale, known -> each(pitch -> Background.allSteps(pitch, known)))
        .get(Math.floorMod(from, PITCH_CLASSES));
  }

  /** {@link Background#allFirsts} about this pitch. */
  double allFirsts(PitchClassSet scale, int centre) {
    return firsts
        .computeIfAbsent(scale, known -> each(pitch -> Background.allFirsts(pitch, known)))
        .get(Math.floorMod(centre, PITCH_CLASSES));
  }

  private static List<Double> each(IntToDoubleFunction byPitch) {
    return IntStream.range(0, PITCH_CLASSES).mapToDouble(byPitch).boxed().toList();
  }
}
