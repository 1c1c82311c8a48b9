package holdfast.motif;

import java.util.List;

/**
 * The idea with something left out, added or exchanged: fragments, repetitions, extensions,
 * ornaments, other endings, other octaves, other rhythms.
 */
final class ReshapedForms {

  /** Detail of an idea that ends otherwise. */
  static final String CHANGED_ENDING = "changed ending";

  /** Fragments used once, against those that are repeated. Common practice, no source. */
  private static final double ONCE = 0.88;

  /** Fragments from the idea's head. Common practice: "usually the head". */
  private static final double FROM_HEAD = 0.65;

  /** Extensions at the end rather than in front. Common practice. */
  private static final double AT_END = 0.75;

  /** How often a phrase is the whole idea more than once. Common practice. */
  private static final double WHOLE_AGAIN = 0.03;

  /** Each further repetition is this likely. */
  private static final double ONE_MORE = 0.5;

  /** How often an idea comes back with another ending; with notes in other octaves; in a rhythm. */
  private static final double EXCHANGED = 0.015;

  /** A changed ending leaves at least this share of the idea. */
  private static final double HEAD_KEPT = 0.6;

  private static final double[] NONE = {};

  private final Comparison c;
  private final List<PitchMap> carried;

  ReshapedForms(Comparison c, List<PitchMap> carried) {
    this.c = c;
    this.carried = carried;
  }

  void weigh() {
    if (c.n >= 3 && c.m >= 2 && c.m <= c.n) {
      fragments();
    }
    repeated();
    if (c.m > c.n) {
      extended();
    }
    if (c.m >= c.n && c.n >= 2) {
      ornamented();
    }
    if (c.n >= 3) {
      exchanged();
    }
  }

  private void fragments() {
    Pacing head = between(Edges.head(c.n, c.m, c.slip));
    Pacing later = between(Edges.later(c.n, c.m, c.slip));
    double prior = c.logPrior(Treatment.FRAGMENT) + Math.log(ONCE);
    for (PitchMap map : carried) {
      double log = prior + Comparison.logShare(map);
      plain(Treatment.FRAGMENT, log + Math.log(FROM_HEAD), map, head, "head");
      plain(Treatment.FRAGMENT, log + Math.log(1 - FROM_HEAD), map, later, "");
    }
  }

  private void extended() {
    Pacing after = between(Edges.extendedAfter(c.n, c.m, c.slip));
    Pacing before = between(Edges.extendedBefore(c.n, c.m, c.slip));
    double prior = c.logPrior(Treatment.EXTENDED);
    for (PitchMap map : carried) {
      double log = prior + Comparison.logShare(map);
      plain(Treatment.EXTENDED, log + Math.log(AT_END), map, after, "at the end");
      plain(Treatment.EXTENDED, log + Math.log(1 - AT_END), map, before, "in front");
    }
  }

  private Pacing between(Edges edges) {
    return c.aligner.pacing(c.plain.times(), edges);
  }

  private void plain(Treatment treatment, double log, PitchMap map, Pacing pacing, String detail) {
    c.collected.weigh(treatment, log, map, 1, pacing, detail);
  }

  private void ornamented() {
    OrnamentAligner ornaments =
        new OrnamentAligner(c.idea, c.phrase, c.background, c.rhythm, c.slip);
    double prior = c.logPrior(Treatment.ORNAMENTED);
    for (PitchMap map : carried) {
      double log = prior + Comparison.logShare(map) + ornaments.align(map.notes(), 1);
      if (log == Double.NEGATIVE_INFINITY || (c.m == c.n && !anyExtra(ornaments.path()))) {
        continue;
      }
      Explanation.Redo redo =
          () -> {
            ornaments.align(map.notes(), 1);
            return ornaments.path();
          };
      c.collected.keep(new Explanation(Treatment.ORNAMENTED, log, map, 1, false, redo, ""));
    }
  }

  private static boolean anyExtra(int[] path) {
    for (int i : path) {
      if (i < 0) {
        return true;
      }
    }
    return false;
  }

  /** The head of the idea, or all of it, several times in a row. */
  void repeated() {
    for (int length = 2; length <= c.n; length++) {
      int times = c.m / length;
      if (c.m % length != 0 || times < 2) {
        continue;
      }
      double prior =
          length == c.n
              ? Math.log(WHOLE_AGAIN)
              : c.logPrior(Treatment.FRAGMENT) + Math.log((1 - ONCE) / Math.max(1, c.n - 2));
      for (PitchMap map : carried) {
        if (map.move() != PitchMap.Move.SKEWED) {
          double log =
              prior
                  + Comparison.logShare(map)
                  + (times - 1) * Math.log(ONE_MORE)
                  + repeated(map, length);
          keepRepeated(map, log, length, times);
        }
      }
    }
  }

  private void keepRepeated(PitchMap map, double log, int length, int times) {
    Explanation.Redo redo =
        () -> {
          int[] path = new int[c.m];
          for (int j = 0; j < c.m; j++) {
            path[j] = j % length;
          }
          return path;
        };
    Treatment treatment = length == c.n ? Comparison.treatment(map) : Treatment.FRAGMENT;
    String detail = times == 2 ? "twice" : times + " times";
    c.collected.keep(new Explanation(treatment, log, map, 1, false, redo, detail));
  }

  /** ln likelihood of so many notes said again and again, with pauses of any length between. */
  private double repeated(PitchMap map, int length) {
    double log = 0;
    for (int j = 0; j < c.m; j++) {
      int i = j % length;
      log += map.notes()[i * c.m + j];
      if (j > 0) {
        double step = c.phrase.onset[j] - c.phrase.onset[j - 1];
        log +=
            i == 0
                ? c.background.time[j]
                : c.rhythm.meant(step, c.idea.onset[i] - c.idea.onset[i - 1]);
      }
    }
    return log;
  }

  /** Carried but for an ending of its own, notes in another octave, or a rhythm of its own. */
  private void exchanged() {
    Pacing free = c.aligner.freePacing(c.plain.edges());
    for (PitchMap map : carried) {
      if (map.move() == PitchMap.Move.SKEWED) {
        continue;
      }
      double log = Math.log(EXCHANGED) + Comparison.logShare(map);
      for (int tail = 1; tail <= 2; tail++) {
        if (c.n - tail >= Math.max(2, Math.ceil(HEAD_KEPT * c.n))) {
          ending(map, log, tail);
        }
      }
      if (map.move() == PitchMap.Move.LITERAL) {
        PitchMap octaves = Endings.anyOctave(map, c.phrase);
        c.collected.weigh(
            Treatment.RHYTHM_KEPT,
            Math.log(EXCHANGED),
            octaves,
            1,
            c.plain,
            "notes in another octave",
            path -> Endings.someInAnotherOctave(octaves, c.phrase, path));
      }
      c.collected.weigh(Treatment.CONTOUR_KEPT, log, map, 1, free, Explanation.OWN_RHYTHM);
    }
  }

  private void ending(PitchMap map, double log, int tail) {
    PitchMap open = Endings.open(map, c.n, c.m, tail, c.background);
    if (c.collected.hopeless(log, open, c.plain)) {
      return;
    }
    double weight =
        log + c.aligner.alignAbove(c.collected.floor() - log, open.notes(), NONE, c.plain);
    if (weight > c.collected.floor()) {
      boolean contour = Contour.kept(c.idea, c.phrase, c.aligner.path());
      Explanation.Redo redo =
          () -> {
            c.aligner.align(open.notes(), NONE, c.plain);
            return c.aligner.path();
          };
      c.collected.keep(
          new Explanation(
              contour ? Treatment.CONTOUR_KEPT : Treatment.RHYTHM_KEPT,
              weight,
              open,
              1,
              false,
              redo,
              CHANGED_ENDING));
    }
  }
}
