package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.EnumMap;
import java.util.Map;

/**
 * How likely is a phrase as new material? A mixture of melodic motion, scale run, arpeggio,
 * repeated note and chromatic line, each a chain in which a note follows from the one before.
 *
 * <p>Melodic motion: interval sizes fall off as in folk and jazz melodies (steps commonest, then
 * repeated notes and thirds, leaps rarer, from memory), notes of the scale four times as likely as
 * others where a scale is known. The first note lies about the idea's register.
 */
final class Background {

  /** Shares of interval sizes 0 to 12 semitones, up and down together; from memory. */
  private static final double[] SIZES = {
    0.13, 0.15, 0.26, 0.12, 0.09, 0.085, 0.02, 0.055, 0.02, 0.025, 0.015, 0.01, 0.02
  };

  /** Beyond an octave, each further semitone halves a very small share. */
  private static final double BEYOND_OCTAVE = 0.004;

  /** A note outside the scale against one in it. */
  private static final double OUTSIDE = 0.25;

  /** Spread of a new phrase's first note about the idea's mean pitch, in semitones. */
  private static final double REGISTER = 6;

  /** How often a player who runs, breaks a chord or repeats goes on doing so at the next note. */
  private static final double KEEPS_ON = 0.85;

  private final Line phrase;
  private final Ground[] grounds;

  /** ln probability of each note's pitch by melodic motion, scale weights included. */
  final double[] pitch;

  /** ln of scale weight over the weights of all that might have come: the part scales play. */
  final double[] taste;

  /** ln density of each note's time since the one before, in new material; 0 for the first. */
  final double[] time;

  private final Map<Material, Double> kinds = new EnumMap<>(Material.class);
  private final double total;

  Background(Line idea, Line phrase, Ground[] grounds, RhythmModel rhythm, Scales scales) {
    this.phrase = phrase;
    this.grounds = grounds;
    int m = phrase.size;
    this.pitch = new double[m];
    this.taste = new double[m];
    this.time = new double[m];
    double register = 0;
    for (int p : idea.pitch) {
      register += p;
    }
    int centre = (int) Math.round(register / idea.size);
    pitch[0] = first(phrase.pitch[0], centre, grounds[0].scale(), scales);
    for (int j = 1; j < m; j++) {
      int from = phrase.pitch[j - 1];
      int step = phrase.pitch[j] - from;
      taste[j] = taste(from, phrase.pitch[j], grounds[j].scale(), scales);
      pitch[j] = Math.log(stepShare(step)) + taste[j];
      double before = j == 1 ? 0 : phrase.onset[j - 1] - phrase.onset[j - 2];
      time[j] = rhythm.free(phrase.onset[j] - phrase.onset[j - 1], before);
    }
    this.total = mix();
  }

  /** ln probability density of the whole phrase, length aside, as new material of any kind. */
  double logTotal() {
    return total;
  }

  /** The kind that explains the phrase best. */
  Material kind() {
    Material best = Material.MELODY;
    for (Material kind : kinds.keySet()) {
      if (kinds.get(kind) > kinds.get(best)) {
        best = kind;
      }
    }
    return best;
  }

  /**
   * How much better note j follows the one before for one who runs on than in a melody, ln; what a
   * whole run gains is the sum, less what runs are rarer ({@link #rarer}).
   */
  double gain(Material kind, int j) {
    return Math.log(KEEPS_ON * goesOn(kind, j) / Math.exp(pitch[j]) + 1 - KEEPS_ON);
  }

  /** ln of how much rarer than melodies phrases of this kind are, 0 or less. */
  static double rarer(Material kind) {
    return Math.log(kind.share() / Material.MELODY.share());
  }

  private double mix() {
    int m = phrase.size;
    double times = 0;
    double melody = pitch[0];
    for (int j = 1; j < m; j++) {
      times += time[j];
      melody += pitch[j];
    }
    for (Material kind : Material.values()) {
      double log = kind == Material.MELODY ? melody : pitch[0];
      if (kind != Material.MELODY) {
        for (int j = 1; j < m; j++) {
          double goesOn = goesOn(kind, j);
          log += Math.log(KEEPS_ON * goesOn + (1 - KEEPS_ON) * Math.exp(pitch[j]));
        }
      }
      kinds.put(kind, Math.log(kind.share()) + log);
    }
    double top = Double.NEGATIVE_INFINITY;
    for (double log : kinds.values()) {
      top = Math.max(top, log);
    }
    double sum = 0;
    for (double log : kinds.values()) {
      sum += Math.exp(log - top);
    }
    return top + Math.log(sum) + times;
  }

  /** Probability of the step into note j for one who runs on in the kind's own way. */
  private double goesOn(Material kind, int j) {
    int step = phrase.pitch[j] - phrase.pitch[j - 1];
    int before = j == 1 ? 0 : phrase.pitch[j - 1] - phrase.pitch[j - 2];
    double direction =
        before == 0 ? 0.5 : Integer.signum(step) == Integer.signum(before) ? 0.85 : 0.15;
    int size = Math.abs(step);
    return switch (kind) {
      case REPEATED_NOTE -> step == 0 ? 1 : 0;
      case CHROMATIC_LINE -> size == 1 ? direction : 0;
      case SCALE_RUN -> {
        PitchClassSet scale = grounds[j].scale();
        if (scale.isEmpty()) {
          yield size == 2 ? 0.55 * direction : size == 1 ? 0.4 * direction : 0;
        }
        yield step != 0 && neighbours(scale, phrase.pitch[j - 1], step) ? direction : 0;
      }
      case ARPEGGIO -> {
        PitchClassSet chord = grounds[j].chord();
        if (chord.isEmpty()) {
          yield size == 3 || size == 4 ? 0.37 * direction : size == 5 ? 0.2 * direction : 0;
        }
        yield step != 0 && neighbours(chord, phrase.pitch[j - 1], step) ? direction : 0;
      }
      case MELODY -> Math.exp(pitch[j]);
    };
  }

  /** Whether the step leads to the very next member of the set in its direction. */
  private static boolean neighbours(PitchClassSet set, int from, int step) {
    if (!set.contains(from + step)) {
      return false;
    }
    for (int p = from + Integer.signum(step); p != from + step; p += Integer.signum(step)) {
      if (set.contains(p)) {
        return false;
      }
    }
    return true;
  }

  /** Share of one signed interval. */
  static double stepShare(int step) {
    int size = Math.abs(step);
    if (size == 0) {
      return SIZES[0];
    }
    if (size <= 12) {
      return SIZES[size] / 2;
    }
    return BEYOND_OCTAVE * Math.pow(0.5, size - 12.0);
  }

  /** Share of one direction: up, down, or the same note again. */
  static double directionShare(int step) {
    return step == 0 ? SIZES[0] : (1 - SIZES[0]) / 2;
  }

  private static double taste(int from, int to, PitchClassSet scale, Scales scales) {
    if (scale.isEmpty()) {
      return 0;
    }
    return Math.log((scale.contains(to) ? 1 : OUTSIDE) / scales.allSteps(scale, from));
  }

  /** The weights of all that may follow a pitch, within an octave. */
  static double allSteps(int from, PitchClassSet scale) {
    double sum = 0;
    for (int step = -12; step <= 12; step++) {
      sum += stepShare(step) * (scale.contains(from + step) ? 1 : OUTSIDE);
    }
    return sum;
  }

  /** The weights of all that may begin about a pitch, within two octaves. */
  static double allFirsts(int centre, PitchClassSet scale) {
    double sum = 0;
    for (int p = -24; p <= 24; p++) {
      sum += bell(p) * (scale.isEmpty() || scale.contains(centre + p) ? 1 : OUTSIDE);
    }
    return sum;
  }

  private static double first(int pitch, int centre, PitchClassSet scale, Scales scales) {
    double sum = scales.allFirsts(scale, centre);
    double weight = scale.isEmpty() || scale.contains(pitch) ? 1 : OUTSIDE;
    // Beyond two octaves the bell is flat, so that a far register is rare, never impossible.
    return Math.log(bell(Math.max(-24, Math.min(24, pitch - centre))) * weight / sum);
  }

  private static double bell(int semitones) {
    return BELL[semitones + 24];
  }

  private static final double[] BELL = bells();

  private static double[] bells() {
    double[] bell = new double[49];
    for (int p = -24; p <= 24; p++) {
      double z = p / REGISTER;
      bell[p + 24] = Math.exp(-0.5 * z * z) + 0.002;
    }
    return bell;
  }
}
