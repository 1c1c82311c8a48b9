package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;

/**
 * The ways in which a line's pitches may have been carried into a phrase. Candidates are proposed
 * by the phrase itself: only moves that bring some note near its place onto what was played.
 */
final class PitchMaps {

  /** Pitches of the twelve major scales, for music whose key nobody told. */
  static final PitchClassSet MAJOR = PitchClassSet.of(0, 2, 4, 5, 7, 9, 11);

  /** A transposition by an octave stands out from all others. */
  private static final double OCTAVE = 0.08;

  /** Beyond an octave: a small share, spread over two more. */
  private static final double FAR = 0.04 / 48;

  /** Transpositions fall off with distance, by an e-fold in so many semitones. */
  private static final double REACH = 6;

  /** Moves along the scale fall off by an e-fold in so many steps. */
  private static final double STEP_REACH = 3;

  private final Line phrase;
  private final Ground[] grounds;
  private final int m;
  private final Intonation intonation;
  private final Scales scales;

  PitchMaps(Line phrase, Ground[] grounds, Intonation intonation, Scales scales) {
    this.phrase = phrase;
    this.grounds = grounds;
    this.m = phrase.size;
    this.intonation = intonation;
    this.scales = scales;
  }

  /** The same pitches. */
  PitchMap literal(Line idea) {
    return rigid(idea, 0, PitchMap.Move.LITERAL, 0);
  }

  /** The most promising transpositions, at most {@code most}. */
  List<PitchMap> transposed(Line idea, int most) {
    List<PitchMap> maps = new ArrayList<>();
    for (int by : Votes.best(idea.pitch, phrase.pitch, most + 1)) {
      if (by != 0 && maps.size() < most) {
        maps.add(rigid(idea, by, PitchMap.Move.TRANSPOSED, logTransposition(by)));
      }
    }
    return maps;
  }

  private PitchMap rigid(Line idea, int by, PitchMap.Move move, double logPrior) {
    int[] expected = new int[idea.size * m];
    for (int i = 0; i < idea.size; i++) {
      for (int j = 0; j < m; j++) {
        expected[i * m + j] = idea.pitch[i] + by;
      }
    }
    return new PitchMap(move, expected, slipped(expected, idea), by, 0, logPrior);
  }

  /**
   * Tonal sequences: the idea moved along a scale, from the scale of its own chord to the scale of
   * the phrase's, or along the key. Those that come to a plain transposition are left out, since
   * that is what musicians call them then.
   */
  List<PitchMap> sequences(Line idea, Ground[] ideaGrounds, PitchClassSet key) {
    List<PitchMap> maps = new ArrayList<>();
    boolean chords = !ideaGrounds[0].scale().isEmpty() && !grounds[0].scale().isEmpty();
    if (chords) {
      addSteps(maps, idea, ideaGrounds[0].scale(), null, key.isEmpty() ? 0 : Math.log(0.6));
    }
    if (!key.isEmpty()) {
      addSteps(maps, idea, key, key, chords ? Math.log(0.4) : 0);
    }
    if (!chords && key.isEmpty()) {
      for (int tonic = 0; tonic < 12; tonic++) {
        PitchClassSet scale = MAJOR.transpose(tonic);
        if (holds(scale, idea)) {
          addSteps(maps, idea, scale, scale, Math.log(0.25));
        }
      }
    }
    return maps;
  }

  static boolean holds(PitchClassSet scale, Line idea) {
    for (int p : idea.pitch) {
      if (!scale.contains(p)) {
        return false;
      }
    }
    return true;
  }

  /** Adds moves from one scale to another; {@code to} null stands for each note's own ground. */
  private void addSteps(
      List<PitchMap> maps, Line idea, PitchClassSet from, PitchClassSet to, double logPrior) {
    Ladder home = scales.ladder(from);
    Ladder[] there = new Ladder[m];
    for (int j = 0; j < m; j++) {
      PitchClassSet scale = to == null ? grounds[j].scale() : to;
      if (j > 0 && to == null && grounds[j].equals(grounds[j - 1])) {
        there[j] = there[j - 1];
      } else if (j > 0 && to != null) {
        there[j] = there[0];
      } else {
        there[j] = scales.alongside(scale.size() == from.size() ? scale : from, from);
      }
    }
    int[] phraseSteps = new int[m];
    for (int j = 0; j < m; j++) {
      phraseSteps[j] = there[j].step(phrase.pitch[j]);
    }
    int[] ideaSteps = home.steps(idea.pitch);
    for (int by : Votes.best(ideaSteps, phraseSteps, 2)) {
      int[] expected = new int[idea.size * m];
      for (int i = 0; i < idea.size; i++) {
        int step = ideaSteps[i] + by;
        int above = home.above(idea.pitch[i]);
        for (int j = 0; j < m; j++) {
          expected[i * m + j] = there[j].pitch(step) + above;
        }
      }
      PitchMap map =
          new PitchMap(
              PitchMap.Move.STEPS,
              expected,
              slipped(expected, idea),
              expected[0] - idea.pitch[0],
              by,
              logPrior + logSteps(by));
      if (!map.isRigid(idea.pitch, m) && !map.isIn(maps)) {
        maps.add(map);
      }
    }
  }

  /**
   * The idea in its place (moved by {@code by} semitones), each note that clashes with its chord
   * moved by at most a whole tone onto one that fits. Where no chord is known any note may move.
   */
  PitchMap skewed(Line idea, int by) {
    int[] expected = new int[idea.size * m];
    double[] notes = new double[idea.size * m];
    for (int i = 0; i < idea.size; i++) {
      int meant = idea.pitch[i] + by;
      for (int j = 0; j < m; j++) {
        expected[i * m + j] = meant;
        int off = phrase.pitch[j] - meant;
        double slipped = Math.exp(intonation.log(off, phrase.cents[j] - idea.cents[i]));
        double share = Skew.share(off, meant, grounds[j]);
        notes[i * m + j] = Math.log(off == 0 ? share * slipped : share + slipped);
      }
    }
    double logPrior = by == 0 ? Math.log(0.8) : Math.log(0.2) + logTransposition(by);
    return new PitchMap(PitchMap.Move.SKEWED, expected, notes, by, 0, logPrior);
  }

  /** The map with every note free to move by up to a major third, as a player may choose. */
  PitchMap someMoved(PitchMap place, Line idea) {
    double[] notes = new double[place.notes().length];
    for (int c = 0; c < notes.length; c++) {
      int off = phrase.pitch[c % m] - place.expected()[c];
      int size = Math.abs(off);
      double moved = size < MOVES.length ? MOVES[size] : 0;
      double beside = phrase.cents[c % m] - idea.cents[c / m];
      notes[c] =
          off == 0 ? Math.log(moved) : Math.log(moved + Math.exp(intonation.log(off, beside)));
    }
    return new PitchMap(
        PitchMap.Move.SKEWED,
        place.expected(),
        notes,
        place.semitones(),
        place.steps(),
        place.logPrior());
  }

  /** A note that a player may move: stays, or moves by so many semitones to one side. */
  private static final double[] MOVES = {0.6, 0.06, 0.07, 0.04, 0.03};

  /** ln probability of each played pitch where others were expected, the idea the right way up. */
  double[] slipped(int[] expected, Line idea) {
    return slipped(expected, idea, -1);
  }

  /** The same where the idea is mirrored: what was sung too high would be too low. */
  double[] slippedInMirror(int[] expected, Line idea) {
    return slipped(expected, idea, 1);
  }

  private double[] slipped(int[] expected, Line idea, int way) {
    double[] notes = new double[expected.length];
    for (int c = 0; c < expected.length; c++) {
      int j = c % m;
      notes[c] =
          intonation.log(phrase.pitch[j] - expected[c], phrase.cents[j] + way * idea.cents[c / m]);
    }
    return notes;
  }

  /** ln probability of a transposition, among all but none at all. */
  static double logTransposition(int by) {
    int size = Math.abs(by);
    if (size == 12) {
      return Math.log(OCTAVE);
    }
    if (size > 12) {
      return Math.log(FAR);
    }
    return Math.log((1 - 2 * OCTAVE - 0.04) * Math.exp(-size / REACH) / NEAR_SUM);
  }

  private static final double NEAR_SUM = nearSum();

  private static double nearSum() {
    double sum = 0;
    for (int size = 1; size < 12; size++) {
      sum += 2 * Math.exp(-size / REACH);
    }
    return sum;
  }

  /** ln probability of a move by scale steps; none at all, from scale to scale, is commonest. */
  private static double logSteps(int by) {
    // The sum of e^(−|g|/3) over all g is (1 + q) / (1 − q) with q = e^(−1/3).
    double q = Math.exp(-1 / STEP_REACH);
    return Math.log((1 - q) / (1 + q)) - Math.abs(by) / STEP_REACH;
  }
}
