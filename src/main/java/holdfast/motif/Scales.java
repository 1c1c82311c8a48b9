package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** What a judge asks of the same few scales again and again, worked out once. */
final class Scales {

  /** Cheap to make, and hardly ever so many: beyond it the memory starts anew. */
  private static final int MOST = 4096;

  private static final int PITCH_CLASSES = 12;

  private record Pair(PitchClassSet scale, PitchClassSet beside) {}

  private record Sums(double[] steps, double[] firsts) {}

  private final Map<Pair, Ladder> ladders = new ConcurrentHashMap<>();
  private final Map<PitchClassSet, Sums> sums = new ConcurrentHashMap<>();

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
    return sums(scale).steps()[Math.floorMod(from, PITCH_CLASSES)];
  }

  /** {@link Background#allFirsts} about this pitch. */
  double allFirsts(PitchClassSet scale, int centre) {
    return sums(scale).firsts()[Math.floorMod(centre, PITCH_CLASSES)];
  }

  private Sums sums(PitchClassSet scale) {
    Sums known = sums.get(scale);
    if (known == null) {
      double[] steps = new double[PITCH_CLASSES];
      double[] firsts = new double[PITCH_CLASSES];
      for (int from = 0; from < PITCH_CLASSES; from++) {
        steps[from] = Background.allSteps(from, scale);
        firsts[from] = Background.allFirsts(from, scale);
      }
      known = new Sums(steps, firsts);
      sums.put(scale, known);
    }
    return known;
  }
}
