package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;

/**
 * All that may account for a phrase, given an idea: every treatment with the parameters that the
 * phrase itself proposes, each with ln(prior × likelihood). What is new material is the yardstick
 * among them.
 */
final class Explanations {

  /** Where new material stands on its length: as a player of phrases like the idea would. */
  private static final double LENGTH_REACH = 3;

  /** Of all stretches, how often by each factor (or its inverse). Common practice, no source. */
  private static final double[] STRETCHES = {2, 1.5, 3, 4};

  private static final double[] STRETCH_SHARES = {0.72, 0.15, 0.06, 0.03};

  /** Any other factor, a share spread over all of them. */
  private static final double ODD_STRETCH = 0.04;

  /** Tempo of one statement against another, in e-folds: 10 %. */
  private static final double TEMPO_SPREAD = 0.1;

  /** A tempo that differs by less is no other tempo: the rhythm model's drift carries it. */
  private static final double SAME_TEMPO = 0.06;

  /** How often a contour is kept by moving a few notes only, rather than all intervals. */
  private static final double SOME_NOTES = 0.4;

  private final Line idea;
  private final Ground[] ideaGrounds;
  private final Line phrase;
  private final Ground[] grounds;
  private final PitchClassSet key;
  private final Player player;
  private final Priors priors;
  private final int n;
  private final int m;
  private final RhythmModel rhythm;
  private final Background background;
  private final Aligner aligner;
  private final PitchMaps maps;
  private final double[] plainTimes;
  private final List<Explanation> found = new ArrayList<>();
  private final double[] none = {};

  Explanations(
      Line idea,
      Ground[] ideaGrounds,
      Line phrase,
      Ground[] grounds,
      PitchClassSet key,
      Player player,
      Priors priors) {
    this.idea = idea;
    this.ideaGrounds = ideaGrounds;
    this.phrase = phrase;
    this.grounds = grounds;
    this.key = key;
    this.player = player;
    this.priors = priors;
    this.n = idea.size;
    this.m = phrase.size;
    double meanStep = n < 2 ? 1 : Math.max(idea.span() / (n - 1), 0.25);
    this.rhythm = new RhythmModel(player, meanStep);
    this.background = new Background(idea, phrase, grounds, rhythm);
    this.aligner = new Aligner(n, phrase, background);
    this.maps = new PitchMaps(phrase, grounds, player);
    this.plainTimes = aligner.times(idea, 1, rhythm);
  }

  /** Everything that was weighed; new material is always among it. */
  List<Explanation> all() {
    List<PitchMap> carried = carried(idea, 2);
    newMaterial();
    plain(carried);
    contourAndRhythm(carried);
    mirrored();
    backwards();
    stretched(carried);
    if (m <= n) {
      fragments(carried);
    }
    repeated();
    if (m > n) {
      extended(carried);
    }
    if (m >= n && n >= 2) {
      ornamented(carried);
    }
    nearlyCarried(carried);
    return found;
  }

  Background background() {
    return background;
  }

  /** Literal, transposed, by steps, skewed. */
  private List<PitchMap> carried(Line line, int transpositions) {
    List<PitchMap> all = new ArrayList<>();
    all.add(maps.literal(line));
    List<PitchMap> moved = maps.transposed(line, transpositions);
    all.addAll(moved);
    all.addAll(maps.sequences(line, ideaGrounds, key));
    all.add(maps.skewed(line, 0));
    if (!moved.isEmpty()) {
      all.add(maps.skewed(line, moved.get(0).semitones()));
    }
    return all;
  }

  private void newMaterial() {
    double log = Math.log(priors.share(Treatment.NEW)) + background.logTotal() + lengthAsNew();
    found.add(
        new Explanation(Treatment.NEW, log, maps.literal(idea), 1, false, () -> unmatched(m), ""));
  }

  /** Phrases of new material are about as long as the idea, give or take a few notes. */
  private double lengthAsNew() {
    double sum = 0;
    for (int length = 1; length <= n + 30; length++) {
      sum += Math.exp(-Math.abs(length - n) / LENGTH_REACH);
    }
    return -Math.abs(m - n) / LENGTH_REACH - Math.log(sum);
  }

  private static int[] unmatched(int m) {
    int[] ideaOf = new int[m];
    java.util.Arrays.fill(ideaOf, -1);
    return ideaOf;
  }

  private static Treatment plainTreatment(PitchMap map) {
    return switch (map.move()) {
      case LITERAL -> Treatment.LITERAL;
      case TRANSPOSED -> Treatment.TRANSPOSED;
      case STEPS, SKEWED -> Treatment.SEQUENCE;
    };
  }

  /** ln share among sequences: by steps, or skewed to the chord. */
  private double logWay(PitchMap map) {
    return switch (map.move()) {
      case LITERAL, TRANSPOSED -> 0;
      case STEPS -> Math.log(0.6);
      case SKEWED -> Math.log(0.4);
    };
  }

  /** ln share of a pitch map within a treatment that is about something else than pitch. */
  private double logCarried(PitchMap map) {
    double way =
        switch (map.move()) {
          case LITERAL -> 0.5;
          case TRANSPOSED -> 0.25;
          case STEPS -> 0.17;
          case SKEWED -> 0.08;
        };
    return Math.log(way) + map.logPrior();
  }

  private void plain(List<PitchMap> carried) {
    Edges edges = Edges.whole(n, m, player);
    double tempo = tempo();
    boolean otherTempo = Math.abs(Math.log(tempo)) > SAME_TEMPO && m >= n - 1 && m <= n + 1;
    double z = Math.log(tempo) / TEMPO_SPREAD;
    double logTempo = -0.5 * z * z - 1.5;
    double[] times = otherTempo ? aligner.times(idea, tempo, rhythm) : none;
    for (PitchMap map : carried) {
      double log = Math.log(priors.share(plainTreatment(map))) + logWay(map) + map.logPrior();
      addPlain(map, log, 1, plainTimes, edges);
      if (otherTempo) {
        addPlain(map, log + logTempo, tempo, times, edges);
      }
    }
  }

  private void addPlain(PitchMap map, double logPrior, double scale, double[] times, Edges edges) {
    double log = logPrior + aligner.align(map.notes(), none, times, edges);
    if (map.move() == PitchMap.Move.SKEWED && !trulySkewed(map, aligner.path())) {
      return;
    }
    add(plainTreatment(map), log, map, scale, times, edges, "");
  }

  /** A skew moves at least one note that asked for it, and turns no up into a down. */
  private boolean trulySkewed(PitchMap map, int[] ideaOf) {
    boolean demanded = false;
    int before = -1;
    for (int j = 0; j < m; j++) {
      int i = ideaOf[j];
      if (i < 0) {
        continue;
      }
      int meant = map.expected()[i * m + j];
      demanded |=
          phrase.pitch[j] != meant && (!grounds[j].knowsChord() || !grounds[j].welcomes(meant));
      if (before >= 0) {
        int was = Integer.signum(idea.pitch[i] - idea.pitch[ideaOf[before]]);
        int is = Integer.signum(phrase.pitch[j] - phrase.pitch[before]);
        if (was * is < 0) {
          return false;
        }
      }
      before = j;
    }
    return demanded;
  }

  private boolean anyMoved(PitchMap map, int[] ideaOf) {
    for (int j = 0; j < m; j++) {
      if (ideaOf[j] >= 0 && phrase.pitch[j] != map.expected()[ideaOf[j] * m + j]) {
        return true;
      }
    }
    return false;
  }

  /** The phrase's tempo against the idea's, where it is near enough to be the same one. */
  private double tempo() {
    double ratio = spanRatio();
    return ratio > 0.75 && ratio < 1.33 ? ratio : 1;
  }

  private double spanRatio() {
    return n < 2 || m < 2 || idea.span() <= 0 || phrase.span() <= 0
        ? 1
        : phrase.span() / idea.span();
  }

  private void add(
      Treatment treatment,
      double log,
      PitchMap map,
      double scale,
      double[] times,
      Edges edges,
      String detail) {
    if (log == Double.NEGATIVE_INFINITY) {
      return;
    }
    found.add(
        new Explanation(
            treatment,
            log,
            map,
            scale,
            false,
            () -> {
              aligner.align(map.notes(), none, times, edges);
              return aligner.path();
            },
            detail));
  }

  private void contourAndRhythm(List<PitchMap> carried) {
    Edges edges = Edges.whole(n, m, player);
    PitchMap place = maps.literal(idea);
    double[] starts = Contour.starts(idea, phrase, background);
    double[] moves = Contour.moves(idea, phrase, background, aligner);
    double log =
        Math.log(priors.share(Treatment.CONTOUR_KEPT) * (1 - SOME_NOTES))
            + aligner.align(starts, moves, plainTimes, edges);
    found.add(
        new Explanation(
            Treatment.CONTOUR_KEPT,
            log,
            place,
            1,
            false,
            () -> {
              aligner.align(starts, moves, plainTimes, edges);
              return aligner.path();
            },
            ""));
    for (PitchMap map : List.of(carried.get(0), carried.get(1))) {
      if (map.move() == PitchMap.Move.LITERAL || map.move() == PitchMap.Move.TRANSPOSED) {
        someNotesMoved(map, edges);
      }
    }
    double[] free = new double[n * m];
    double melody = 0;
    double times = 0;
    for (int j = 0; j < m; j++) {
      melody += background.pitch[j];
      times += background.time[j];
      for (int i = 0; i < n; i++) {
        free[i * m + j] = background.pitch[j];
      }
    }
    // The pitches are new material of any kind, not melodic motion alone.
    double anyKind = background.logTotal() - times - melody;
    double rhythmLog =
        Math.log(priors.share(Treatment.RHYTHM_KEPT))
            + aligner.align(free, none, plainTimes, edges)
            + anyKind;
    if (n >= 2) {
      found.add(
          new Explanation(
              Treatment.RHYTHM_KEPT,
              rhythmLog,
              place,
              1,
              false,
              () -> {
                aligner.align(free, none, plainTimes, edges);
                return aligner.path();
              },
              ""));
    }
  }

  /** The contour kept by moving some notes and leaving the others in their place. */
  private void someNotesMoved(PitchMap place, Edges edges) {
    PitchMap map = maps.someMoved(place);
    double log =
        Math.log(priors.share(Treatment.CONTOUR_KEPT) * SOME_NOTES)
            + (place.semitones() == 0 ? Math.log(0.8) : Math.log(0.2) + place.logPrior())
            + aligner.align(map.notes(), none, plainTimes, edges);
    int[] path = aligner.path();
    if (anyMoved(map, path) && Contour.kept(idea, phrase, path)) {
      add(Treatment.CONTOUR_KEPT, log, map, 1, plainTimes, edges, "");
    }
  }

  private void mirrored() {
    if (n < 2) {
      return;
    }
    Edges edges = Edges.whole(n, m, player);
    double half = Math.log(0.5) + Math.log(priors.share(Treatment.INVERTED));
    List<PitchMap> real = maps.mirrored(idea, 2);
    for (PitchMap map : real) {
      double log = half + map.logPrior() + aligner.align(map.notes(), none, plainTimes, edges);
      add(Treatment.INVERTED, log, map, 1, plainTimes, edges, "");
    }
    for (PitchMap map : maps.mirroredBySteps(idea, ideaGrounds, key, 2)) {
      if (real.stream().noneMatch(map::sameAs)) {
        double log = half + map.logPrior() + aligner.align(map.notes(), none, plainTimes, edges);
        add(Treatment.INVERTED, log, map, 1, plainTimes, edges, "by scale steps");
      }
    }
  }

  private void backwards() {
    if (n < 2) {
      return;
    }
    Line kept = idea.reversed(false);
    Line turned = idea.reversed(true);
    backwards(kept, plainTimes, Math.log(0.55));
    backwards(turned, aligner.times(turned, 1, rhythm), Math.log(0.45));
  }

  private void backwards(Line line, double[] times, double logWay) {
    boolean sameRhythm = java.util.Arrays.equals(line.onset, idea.onset);
    Edges edges = Edges.whole(n, m, player);
    double prior = Math.log(priors.share(Treatment.RETROGRADE)) + logWay;
    for (PitchMap map : carried(line, 1)) {
      if (map.move() == PitchMap.Move.SKEWED || (sameRhythm && isOwnMirror(line))) {
        continue;
      }
      double log = prior + logCarried(map) + aligner.align(map.notes(), none, times, edges);
      found.add(
          new Explanation(
              Treatment.RETROGRADE,
              log,
              map,
              1,
              true,
              () -> {
                aligner.align(map.notes(), none, times, edges);
                int[] path = aligner.path();
                for (int j = 0; j < path.length; j++) {
                  path[j] = path[j] < 0 ? -1 : n - 1 - path[j];
                }
                return path;
              },
              sameRhythm ? "" : "rhythm reversed too"));
    }
  }

  /** Whether the line is the idea itself, moved or not: then nobody hears that it was turned. */
  private boolean isOwnMirror(Line line) {
    int by = line.pitch[0] - idea.pitch[0];
    for (int i = 1; i < n; i++) {
      if (line.pitch[i] - idea.pitch[i] != by) {
        return false;
      }
    }
    return true;
  }

  private void stretched(List<PitchMap> carried) {
    if (n < 2 || m < 2) {
      return;
    }
    double ratio = spanRatio();
    double typical = typicalStep(phrase) / typicalStep(idea);
    Edges edges = Edges.whole(n, m, player);
    for (int s = 0; s < STRETCHES.length; s++) {
      for (int way = 0; way < 2; way++) {
        double scale = way == 0 ? STRETCHES[s] : 1 / STRETCHES[s];
        if (near(ratio, scale, 1.3) || near(typical, scale, 1.3)) {
          stretched(carried, scale, Math.log(STRETCH_SHARES[s]), edges);
        }
      }
    }
    boolean odd = m == n && ((ratio > 1.33 && ratio < 5) || (ratio < 0.75 && ratio > 0.2));
    for (double stretch : STRETCHES) {
      odd &= !near(ratio, stretch, 1.05) && !near(ratio, 1 / stretch, 1.05);
    }
    if (odd) {
      stretched(carried, ratio, Math.log(ODD_STRETCH), edges);
    }
  }

  private static boolean near(double ratio, double scale, double within) {
    return ratio < scale * within && ratio * within > scale;
  }

  private static double typicalStep(Line line) {
    double[] steps = new double[line.size - 1];
    for (int i = 1; i < line.size; i++) {
      steps[i - 1] = line.onset[i] - line.onset[i - 1];
    }
    java.util.Arrays.sort(steps);
    return Math.max(steps[steps.length / 2], 1e-3);
  }

  private void stretched(List<PitchMap> carried, double scale, double logScale, Edges edges) {
    Treatment treatment = scale > 1 ? Treatment.AUGMENTED : Treatment.DIMINISHED;
    double[] times = aligner.times(idea, scale, rhythm);
    double prior = Math.log(priors.share(treatment)) + logScale;
    for (PitchMap map : carried) {
      if (map.move() == PitchMap.Move.SKEWED && map.semitones() != 0) {
        continue;
      }
      double log = prior + logCarried(map) + aligner.align(map.notes(), none, times, edges);
      add(treatment, log, map, scale, times, edges, "");
    }
  }

  private void fragments(List<PitchMap> carried) {
    if (n < 3 || m < 2) {
      return;
    }
    Edges head = Edges.head(n, m, player);
    Edges later = Edges.later(n, m, player);
    double prior = Math.log(priors.share(Treatment.FRAGMENT)) + Math.log(0.88);
    for (PitchMap map : carried) {
      double here = prior + logCarried(map);
      double log = here + Math.log(0.65) + aligner.align(map.notes(), none, plainTimes, head);
      add(Treatment.FRAGMENT, log, map, 1, plainTimes, head, "head");
      log = here + Math.log(0.35) + aligner.align(map.notes(), none, plainTimes, later);
      add(Treatment.FRAGMENT, log, map, 1, plainTimes, later, "");
    }
  }

  /** The head of the idea, or all of it, several times in a row. */
  private void repeated() {
    for (int length = 2; length <= n; length++) {
      if (m % length != 0 || m / length < 2) {
        continue;
      }
      boolean whole = length == n;
      double prior =
          whole
              ? Math.log(0.03)
              : Math.log(priors.share(Treatment.FRAGMENT)) + Math.log(0.12 / Math.max(1, n - 2));
      for (PitchMap map : carried(idea, 1)) {
        if (map.move() == PitchMap.Move.SKEWED) {
          continue;
        }
        int period = length;
        double log = prior + logCarried(map);
        for (int j = 0; j < m; j++) {
          int i = j % period;
          log += map.notes()[i * m + j];
          if (j > 0) {
            log +=
                i == 0
                    ? background.time[j]
                    : rhythm.meant(
                        phrase.onset[j] - phrase.onset[j - 1], idea.onset[i] - idea.onset[i - 1]);
          }
        }
        log += (m / period - 1) * Math.log(0.5);
        found.add(
            new Explanation(
                whole ? plainTreatment(map) : Treatment.FRAGMENT,
                log,
                map,
                1,
                false,
                () -> {
                  int[] path = new int[m];
                  for (int j = 0; j < m; j++) {
                    path[j] = j % period;
                  }
                  return path;
                },
                m / period == 2 ? "twice" : m / period + " times"));
      }
    }
  }

  private void extended(List<PitchMap> carried) {
    Edges after = Edges.extendedAfter(n, m, player);
    Edges before = Edges.extendedBefore(n, m, player);
    double prior = Math.log(priors.share(Treatment.EXTENDED));
    for (PitchMap map : carried) {
      double here = prior + logCarried(map);
      double log = here + Math.log(0.75) + aligner.align(map.notes(), none, plainTimes, after);
      add(Treatment.EXTENDED, log, map, 1, plainTimes, after, "at the end");
      log = here + Math.log(0.25) + aligner.align(map.notes(), none, plainTimes, before);
      add(Treatment.EXTENDED, log, map, 1, plainTimes, before, "in front");
    }
  }

  private void ornamented(List<PitchMap> carried) {
    OrnamentAligner ornaments = new OrnamentAligner(idea, phrase, background, rhythm, player);
    double prior = Math.log(priors.share(Treatment.ORNAMENTED));
    for (PitchMap map : carried) {
      double log = prior + logCarried(map) + ornaments.align(map.notes(), 1);
      if (log == Double.NEGATIVE_INFINITY || (m == n && !anyUnmatched(ornaments.path()))) {
        continue;
      }
      found.add(
          new Explanation(
              Treatment.ORNAMENTED,
              log,
              map,
              1,
              false,
              () -> {
                ornaments.align(map.notes(), 1);
                return ornaments.path();
              },
              ""));
    }
  }

  private static boolean anyUnmatched(int[] path) {
    for (int i : path) {
      if (i < 0) {
        return true;
      }
    }
    return false;
  }

  /** Carried but for an ending of its own, notes in another octave, or a rhythm of its own. */
  private void nearlyCarried(List<PitchMap> carried) {
    if (n < 3) {
      return;
    }
    Edges edges = Edges.whole(n, m, player);
    double[] freeTimes = aligner.freeTimes();
    for (PitchMap map : carried) {
      if (map.move() == PitchMap.Move.SKEWED) {
        continue;
      }
      double carry = logCarried(map);
      for (int tail = 1; tail <= 2 && n - tail >= Math.max(2, Math.ceil(0.6 * n)); tail++) {
        PitchMap open = Endings.open(map, n, m, tail, background);
        double log = Math.log(0.015) + carry + aligner.align(open.notes(), none, plainTimes, edges);
        Treatment treatment =
            Contour.kept(idea, phrase, aligner.path())
                ? Treatment.CONTOUR_KEPT
                : Treatment.RHYTHM_KEPT;
        add(treatment, log, open, 1, plainTimes, edges, "changed ending");
      }
      if (map.move() == PitchMap.Move.LITERAL) {
        PitchMap octaves = Endings.anyOctave(map, phrase);
        double log = Math.log(0.015) + aligner.align(octaves.notes(), none, plainTimes, edges);
        if (Endings.someInAnotherOctave(octaves, phrase, aligner.path())) {
          add(Treatment.RHYTHM_KEPT, log, octaves, 1, plainTimes, edges, "notes in another octave");
        }
      }
      double log = Math.log(0.015) + carry + aligner.align(map.notes(), none, freeTimes, edges);
      add(Treatment.CONTOUR_KEPT, log, map, 1, freeTimes, edges, "rhythm of its own");
    }
  }
}
