package holdfast.bench.listening;

import java.util.ArrayList;
import java.util.List;

/** What a listener made of a clip. A plain class, because it is filled step by step. */
final class Hearing {

  /** A value each 10 ms as {@link FrameScore} wants it: hertz, or minus a guess in hertz. */
  final double[] hz;

  final List<TrueNote> notes = new ArrayList<>();

  /** What the first guesses of a live ear came to. */
  final List<TrueNote> early = new ArrayList<>();

  /** For each note that was told live: when, its onset, and its hertz. */
  final List<double[]> told = new ArrayList<>();

  Hearing(int frames) {
    hz = new double[frames];
  }
}
