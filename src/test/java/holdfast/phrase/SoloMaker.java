package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Makes solos as improvisers play them, with known phrase ends: runs of nearly even notes with
 * longer and shorter ones among them, legato, tongued or detached; phrase ends that are held or
 * clipped; breaths between phrases, and now and then none at all; rests inside phrases too, which
 * is what makes the task hard.
 *
 * <p>The amounts are ours. They were set so that the one rule whose result on 456 expert-marked
 * jazz solos is known for certain, a rest longer than 0.30 s (F .879), comes out alike here with
 * {@link Habits#JAZZ}, near its best threshold. A rest longer than a beat, F .638 there, comes out
 * better here: real players breathe shorter than ours where the tempo is slow.
 *
 * <p>Seeds below {@link #HOLD_OUT} were used for setting constants, those from there on only for
 * measuring.
 *
 * @param habits how the made players play
 */
public record SoloMaker(Habits habits) {

  /**
   * How the made players play, each number the mean over players.
   *
   * @param notesInPhrase median number of notes in a phrase
   * @param restInside chance that a note inside a phrase is followed by a rest
   * @param breathSeconds median rest between phrases
   * @param attacca chance that a phrase follows the last without a rest
   * @param detached chance that a phrase is played detached, each note half of its length
   * @param releaseNoise spread of note-offs in seconds
   */
  public record Habits(
      double notesInPhrase,
      double restInside,
      double breathSeconds,
      double attacca,
      double detached,
      double releaseNoise) {

    /** Set against the known results on expert-marked solos. */
    public static final Habits JAZZ = new Habits(12, 0.008, 0.68, 0.02, 0.01, 0.02);

    /** Short breaths, more rests inside: those who leave space. */
    public static final Habits SPACIOUS = new Habits(12, 0.012, 0.60, 0.03, 0.01, 0.02);

    /** Students: few notes, long breaths. */
    public static final Habits STUDENT = new Habits(5, 0.008, 1.2, 0.03, 0.02, 0.02);

    /** Many tongued, detached lines. */
    public static final Habits DETACHED = new Habits(10, 0.010, 0.70, 0.02, 0.15, 0.02);

    /** Note-offs as a careless ear writes them down. */
    public static final Habits NOISY = new Habits(12, 0.008, 0.68, 0.02, 0.01, 0.05);

    /** Long lines in one breath after the other. */
    public static final Habits LONG_LINES = new Habits(20, 0.005, 0.50, 0.04, 0.01, 0.02);
  }

  /** From this seed on nothing was set, only measured. */
  public static final long HOLD_OUT = 1_000_000;

  private static final double[] VARIETY = {1, 1, 1, 1, 1, 1, 2, 2, 2, 1.5, 0.5, 0.5, 2 / 3.0, 3};
  private static final double[] VALUES = {1, 0.5, 1.0 / 3, 0.25, 1.0 / 6};

  /** The same seed makes the same solo. */
  public MadeSolo make(long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    double bpm = clamp(165 * Math.exp(0.45 * gauss(chance)), 40, 340);
    return make(chance, bpm);
  }

  private MadeSolo make(SplittableRandom chance, double bpm) {
    double beat = 60 / bpm;
    double meanArticulation = 0.7 + 0.3 * chance.nextDouble();
    double restInside = habits.restInside * 2 * chance.nextDouble();
    double attacca = habits.attacca * 2 * chance.nextDouble();
    double breath = habits.breathSeconds * Math.exp(0.3 * gauss(chance));
    double swing = chance.nextDouble() < 0.6 ? 1 + chance.nextDouble() * 0.8 : 1;
    int phrases = 12 + chance.nextInt(20);
    List<PlayedNote> notes = new ArrayList<>();
    List<Integer> firsts = new ArrayList<>();
    double t = 1 + chance.nextDouble();
    int pitch = 60 + chance.nextInt(12);
    double home = unit(chance, beat);
    for (int p = 0; p < phrases; p++) {
      firsts.add(notes.size());
      double unit = chance.nextDouble() < 0.6 ? home : unit(chance, beat);
      boolean detached = chance.nextDouble() < habits.detached;
      double articulation = detached ? 0.35 + 0.25 * chance.nextDouble() : meanArticulation;
      // Short-noted phrases of long values, long ones of short values.
      double longer = Math.pow(0.17 / unit, 0.8);
      int n = (int) Math.round(habits.notesInPhrase * longer * Math.exp(0.8 * gauss(chance)));
      n = Math.max(1, Math.min(n, 120));
      double value = unit;
      for (int i = 0; i < n; i++) {
        boolean last = i == n - 1;
        if (value != unit ? chance.nextDouble() < 0.5 : chance.nextDouble() < 0.15) {
          value = unit * pick(chance, VARIETY);
          value = Math.max(value, 0.07);
        }
        double swung =
            value == beat / 2 ? value * 2 * (i % 2 == 0 ? swing : 1) / (1 + swing) : value;
        double ioi = swung * Math.exp(0.06 * gauss(chance));
        double sounding = ioi * clamp(articulation + 0.08 * gauss(chance), 0.25, 1);
        if (value >= 2 * unit && chance.nextDouble() < 0.12) {
          sounding = Math.min(sounding, unit * (0.6 + 0.5 * chance.nextDouble()));
        }
        if (last) {
          double how = chance.nextDouble();
          boolean joined = chance.nextDouble() < attacca;
          if (joined) {
            ioi = unit * (2 + 5 * chance.nextDouble());
            sounding = ioi - 0.2 * chance.nextDouble() * chance.nextDouble();
          } else {
            if (how < 0.4) {
              sounding = Math.max(sounding, unit * (1.5 + 4 * chance.nextDouble()));
            } else if (how < 0.7) {
              sounding = unit * (0.4 + 0.5 * chance.nextDouble());
            }
            double rest = breath * Math.exp(0.55 * gauss(chance));
            // The next phrase starts on some subdivision.
            double grid = beat / 2 < 0.2 ? beat : beat / 2;
            double end = t + sounding + Math.max(rest, 0.15);
            double next = Math.max(Math.round((end - 1) / grid) * grid + 1, t + sounding + 0.12);
            ioi = (chance.nextDouble() < 0.5 ? next : end) - t;
          }
        } else if (chance.nextDouble() < restInside) {
          double rest = unit * pick(chance, new double[] {1, 1, 2, 2, 3, 4});
          sounding = Math.min(sounding, unit);
          ioi = sounding + rest * Math.exp(0.25 * gauss(chance));
        }
        double onset = t + 0.012 * gauss(chance);
        if (!notes.isEmpty()) {
          onset = Math.max(onset, notes.get(notes.size() - 1).onsetSeconds() + 0.02);
        }
        double off = t + sounding + habits.releaseNoise * gauss(chance);
        off = Math.min(off, t + ioi + 0.02);
        notes.add(PlayedNote.key(onset, Math.max(0.02, off - onset), pitch, 80));
        t += ioi;
        pitch = (int) clamp(pitch + step(chance), 45, 90);
      }
    }
    return new MadeSolo(notes, firsts, bpm);
  }

  private static double unit(SplittableRandom chance, double beat) {
    // Whatever the tempo, hands like 5 to 11 notes a second at most, and 2 at least.
    double wish = 0.17 * Math.exp(0.35 * gauss(chance));
    double best = beat;
    for (double value : VALUES) {
      if (Math.abs(Math.log(value * beat / wish)) < Math.abs(Math.log(best / wish))) {
        best = value * beat;
      }
    }
    return best;
  }

  private static int step(SplittableRandom chance) {
    int[] steps = {-7, -5, -4, -3, -3, -2, -2, -2, -1, -1, -1, 0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 5, 7};
    return steps[chance.nextInt(steps.length)];
  }

  private static double pick(SplittableRandom chance, double[] of) {
    return of[chance.nextInt(of.length)];
  }

  static double gauss(SplittableRandom chance) {
    double u = 1 - chance.nextDouble();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * chance.nextDouble());
  }

  static double clamp(double x, double low, double high) {
    return Math.max(low, Math.min(high, x));
  }
}
