package holdfast.listening.pitch;

/**
 * What one frame of sound could be: several pitches, each with a probability, and how likely it is
 * that anything is sung at all.
 *
 * <p>Two windows look at once, one short for good timing and high notes, one long for low notes and
 * noise. Their peaks are candidates. Each candidate gets the probability that it is the first whose
 * mismatch falls under a threshold drawn from a beta distribution: the idea of probabilistic YIN
 * (Mauch and Dixon 2014, "pYIN: a fundamental frequency estimator using probabilistic threshold
 * distributions").
 */
final class FrameAnalysis {

  /** Most candidates kept of a frame. */
  static final int MOST = 14;

  /** Samples of the short window: 25 ms, three periods of 120 Hz. */
  static final int SHORT = 400;

  /** Samples of the long window: 47 ms, three periods of 64 Hz. */
  static final int LONG = 752;

  private static final double SHORT_LOWEST_HZ = 150;
  private static final double LONG_HIGHEST_HZ = 700;

  /** Frames back that a spectrum is compared with: 15 ms, about the rise of a tongued note. */
  static final int FLUX_FRAMES = 3;

  /** Peaks lower than this are not worth keeping as candidates. */
  private static final double LOWEST_PEAK = 0.3;

  /** Clarity that an octave is worth when there are more peaks than places. */
  private static final double WORTH_OF_AN_OCTAVE = 0.05;

  /** Two windows mean the same pitch when they differ by less than this share: 60 cents. */
  private static final double SAME_SHARE = 0.035;

  /** Harmonics that the spectrum is asked for; those above the band do not count. */
  private static final int HARMONICS = 10;

  /** A true pitch has at least this share of its amplitude in odd harmonics. */
  private static final double ODD_ENOUGH = 0.3;

  /**
   * Bins to either side that make up a bin's surroundings: 375 Hz, wider than the gaps between a
   * voice's harmonics, narrower than those between its formants.
   */
  private static final int AROUND = 24;

  /** Share of the whole spectrum's mean under which surroundings count as empty. */
  private static final float EMPTY = 0.1f;

  // Weights of the choice between candidates: a conditional logit, fitted by maximum likelihood on
  // the bench's development clips, with sampled instruments (a General MIDI SoundFont) and with
  // sentences of a diphone voice on gliding pitches, whose vowels put one harmonic far above the
  // others. Plain amplitudes alone follow that harmonic: three shares ask in three ways.
  private static final double PER_LOG_CLARITY = 0.64;
  private static final double PER_OCTAVE = 2.57;
  private static final double PER_LOG_THRESHOLD = 0.1;
  private static final double PER_ODD_SHARE = 2.03;
  private static final double PER_BETWEEN_SHARE = -1.17;
  private static final double PER_LOG_SHARE = 2.76;
  private static final double PER_LOG_ROOT_SHARE = 2.25;
  private static final double PER_LOG_LEVEL_SHARE = 2.26;

  /** Bins of the long window's spectrum. */
  private static final int BINS = 513;

  private static final int QUARTER = BINS / 4;

  /** Steps of the table of the threshold distribution. */
  private static final int TABLE = 1000;

  /** Beta(2, 11.33), mean 0.15: one of the three of the pYIN paper. */
  private static final double BETA_A = 2;

  private static final double BETA_B = 34.0 / 3;

  private final Autocorrelation shortWindow;
  private final Autocorrelation longWindow;
  private final CosinePair lags;
  private final double lowestHz;
  private final double highestHz;
  private final float[] thresholds = new float[TABLE + 1];

  private final double[] hz = new double[2 * MOST];
  private final double[] clarity = new double[2 * MOST];
  private final boolean[] fromLong = new boolean[2 * MOST];
  private int count;

  private final double[] cents = new double[MOST];
  private final double[] mass = new double[MOST];
  private final double[] peak = new double[MOST];
  private final double[] share = new double[MOST];
  private final double[] gap = new double[MOST];
  private final double[] loud = new double[MOST];
  private final float[] amplitude = new float[BINS];

  /** Roots of the amplitudes, which bring weak harmonics nearer to strong ones. */
  private final float[] root = new float[BINS];

  /** Amplitudes over the mean of their surroundings: formants levelled, harmonics left. */
  private final float[] level = new float[BINS];

  /** Sums of the amplitudes under each bin. */
  private final double[] upTo = new double[BINS + 1];

  /** One over the number of bins that make up a bin's surroundings. */
  private final float[] perSurroundings = new float[BINS];

  private double amplitudeSum;
  private double rootSum;
  private double levelSum;
  private int favourite;
  private int kept;

  private double levelDb;
  private double aboveNoiseDb;
  private double brightness;

  /** Compressed spectra of the last frames by number, to see what is new. */
  private final float[][] spectra = new float[PitchTracker.STRIDE + FLUX_FRAMES + 1][257];

  private final float[] rises = new float[257];

  FrameAnalysis(double lowestHz, double highestHz) {
    this.lowestHz = lowestHz;
    this.highestHz = highestHz;
    this.shortWindow =
        new Autocorrelation(SHORT, 512, Math.max(lowestHz, SHORT_LOWEST_HZ), highestHz, 2);
    this.longWindow =
        new Autocorrelation(LONG, 1024, lowestHz, Math.max(LONG_HIGHEST_HZ, lowestHz * 2), 1);
    this.lags = new CosinePair(longWindow.steps());
    for (int k = 0; k < perSurroundings.length; k++) {
      int first = Math.max(0, k - AROUND);
      int last = Math.min(perSurroundings.length, k + AROUND + 1);
      perSurroundings[k] = 1f / (last - first);
    }
    double sum = 0;
    for (int i = 0; i <= TABLE; i++) {
      double x = (i + 0.5) / (TABLE + 1);
      sum += Math.pow(x, BETA_A - 1) * Math.pow(1 - x, BETA_B - 1);
      thresholds[i] = (float) sum;
    }
    for (int i = 0; i <= TABLE; i++) {
      thresholds[i] /= (float) sum;
    }
  }

  /**
   * Looks at the samples from each start on.
   *
   * @param number of the frame
   * @param passed frames since the last look, for which the room's noise is followed; none if a
   *     later frame has been looked at
   */
  void analyse(long number, int passed, float[] samples, int shortStart, int longStart) {
    Autocorrelation.analyse(samples, shortWindow, shortStart, longWindow, longStart, passed, lags);
    count = 0;
    findPeaks(shortWindow, false);
    findPeaks(longWindow, true);
    merge();
    weigh();
    double shortPower = shortWindow.total() / ((double) SHORT * SHORT);
    levelDb = 10 * Math.log10(shortPower + 1e-12);
    aboveNoiseDb =
        10 * Math.log10((shortWindow.total() + 1e-9) / (shortWindow.noiseTotal() + 1e-9));
    brightness = bright(shortWindow.power());
    keepCompressed(number, shortWindow.power());
  }

  private void findPeaks(Autocorrelation window, boolean isLong) {
    int from = Math.max(window.shortestLag(), 2);
    int to = window.longestLag();
    int start = count;
    for (int lag = from; lag <= to; lag++) {
      float here = window.at(lag);
      if (here < LOWEST_PEAK) {
        continue;
      }
      float before = window.at(lag - 1);
      float after = window.at(lag + 1);
      if (here <= before || here < after) {
        continue;
      }
      double bend = before - 2 * here + after;
      double shift = bend == 0 ? 0 : 0.5 * (before - after) / bend;
      double height = Math.min(1, here - 0.25 * (before - after) * shift);
      if (count - start == MOST) {
        int weakest = start;
        for (int i = start + 1; i < count; i++) {
          if (worth(clarity[i], hz[i]) < worth(clarity[weakest], hz[weakest])) {
            weakest = i;
          }
        }
        if (worth(clarity[weakest], hz[weakest]) >= worth(height, window.hertz(lag + shift))) {
          continue;
        }
        // Keep order of lag: close the gap, then append.
        for (int i = weakest; i < count - 1; i++) {
          hz[i] = hz[i + 1];
          clarity[i] = clarity[i + 1];
          fromLong[i] = fromLong[i + 1];
        }
        count--;
      }
      hz[count] = window.hertz(lag + shift);
      clarity[count] = height;
      fromLong[count] = isLong;
      count++;
    }
  }

  /** Joins what both windows saw, orders by falling pitch and keeps the clearest. */
  private void merge() {
    kept = 0;
    int firstLong = count;
    for (int i = 0; i < count; i++) {
      if (fromLong[i]) {
        firstLong = i;
        break;
      }
    }
    for (int i = 0; i < firstLong; i++) {
      double pitch = Frames.cents(hz[i]);
      double seen = clarity[i];
      if (hz[i] < LONG_HIGHEST_HZ * 0.97) {
        int match = -1;
        for (int j = firstLong; j < count; j++) {
          if (clarity[j] > 0
              && Math.abs(hz[i] / hz[j] - 1) < SAME_SHARE
              && (match < 0 || clarity[j] > clarity[match])) {
            match = j;
          }
        }
        if (match >= 0) {
          // The short window stands nearer to the moment; the long one is surer of low notes.
          double share = hz[i] < 250 ? 0.5 : 0.3;
          pitch += share * (Frames.cents(hz[match]) - pitch);
          seen = Math.max(0.5 * (clarity[i] + clarity[match]), clarity[i] * 0.9);
          clarity[match] = 0;
        } else {
          seen *= 0.85;
        }
      }
      keep(pitch, seen);
    }
    for (int j = firstLong; j < count; j++) {
      if (clarity[j] > 0) {
        boolean alsoShort = hz[j] > SHORT_LOWEST_HZ * 1.03;
        keep(Frames.cents(hz[j]), alsoShort ? clarity[j] * 0.85 : clarity[j]);
      }
    }
  }

  /** Of peaks that are about as high, those at multiples of the period go first. */
  private static double worth(double seen, double pitchHz) {
    return seen + WORTH_OF_AN_OCTAVE * Math.log(pitchHz) / Math.log(2);
  }

  private void keep(double pitch, double seen) {
    if (pitch < Frames.cents(lowestHz) || pitch > Frames.cents(highestHz)) {
      return;
    }
    int at = kept;
    if (kept == MOST) {
      int weakest = 0;
      for (int i = 1; i < MOST; i++) {
        if (worth(peak[i], Frames.hertz(cents[i]))
            < worth(peak[weakest], Frames.hertz(cents[weakest]))) {
          weakest = i;
        }
      }
      if (worth(peak[weakest], Frames.hertz(cents[weakest])) >= worth(seen, Frames.hertz(pitch))) {
        return;
      }
      for (int i = weakest; i < MOST - 1; i++) {
        cents[i] = cents[i + 1];
        peak[i] = peak[i + 1];
      }
      at = MOST - 1;
    } else {
      kept++;
    }
    while (at > 0 && cents[at - 1] < pitch) {
      cents[at] = cents[at - 1];
      peak[at] = peak[at - 1];
      at--;
    }
    cents[at] = pitch;
    peak[at] = seen;
  }

  /**
   * From the highest pitch down: who is first under the threshold, over all thresholds? Then the
   * spectrum has its say: whose harmonics hold the sound?
   */
  private void weigh() {
    double lowestMismatch = 1;
    spectrum();
    double highest = -Double.MAX_VALUE;
    for (int i = 0; i < kept; i++) {
      double mismatch = 1 - peak[i];
      double threshold = 1e-4;
      if (mismatch < lowestMismatch) {
        threshold += below(lowestMismatch) - below(mismatch);
        lowestMismatch = mismatch;
      }
      mass[i] =
          PER_LOG_CLARITY * -Math.log(1.02 - peak[i])
              + PER_OCTAVE * cents[i] / 1200
              + PER_LOG_THRESHOLD * Math.log(threshold)
              + harmonicScore(i);
      if (mass[i] > highest) {
        highest = mass[i];
        favourite = i;
      }
    }
    double sum = 0;
    for (int i = 0; i < kept; i++) {
      mass[i] = Math.exp(mass[i] - highest) + 1e-5;
      sum += mass[i];
    }
    for (int i = 0; i < kept; i++) {
      mass[i] /= sum;
    }
  }

  /** Loop by loop, each of a kind that compilers turn into wide instructions. */
  private void spectrum() {
    float[] power = longWindow.power();
    int bins = power.length;
    for (int k = 0; k < bins; k++) {
      amplitude[k] = (float) Math.sqrt(power[k]);
    }
    for (int k = 0; k < bins; k++) {
      root[k] = (float) Math.sqrt(amplitude[k]);
    }
    rootSum = 1e-9 + Sums.of(root, 0, bins);
    addUp();
    amplitudeSum = upTo[bins];
    for (int k = 0; k < AROUND; k++) {
      level[k] = (float) (upTo[k + AROUND + 1] - upTo[0]);
    }
    for (int k = AROUND; k < bins - AROUND; k++) {
      level[k] = (float) (upTo[k + AROUND + 1] - upTo[k - AROUND]);
    }
    for (int k = bins - AROUND; k < bins; k++) {
      level[k] = (float) (upTo[bins] - upTo[k - AROUND]);
    }
    float empty = (float) (EMPTY * amplitudeSum / bins) + 1e-9f;
    for (int k = 0; k < bins; k++) {
      level[k] = amplitude[k] / (level[k] * perSurroundings[k] + empty);
    }
    levelSum = 1e-9 + Sums.of(level, 0, bins);
  }

  /** Sums under each bin: four stretches at once, so that additions need not wait. */
  private void addUp() {
    double a = 1e-9;
    double b = 0;
    double c = 0;
    double d = 0;
    for (int k = 0; k < QUARTER; k++) {
      a += amplitude[k];
      b += amplitude[k + QUARTER];
      c += amplitude[k + 2 * QUARTER];
      d += amplitude[k + 3 * QUARTER];
      upTo[k + 1] = a;
      upTo[k + 1 + QUARTER] = b;
      upTo[k + 1 + 2 * QUARTER] = c;
      upTo[k + 1 + 3 * QUARTER] = d;
    }
    for (int quarter = 1; quarter < 4; quarter++) {
      double under = upTo[quarter * QUARTER];
      for (int k = quarter * QUARTER + 1; k <= (quarter + 1) * QUARTER; k++) {
        upTo[k] += under;
      }
    }
    upTo[4 * QUARTER + 1] = upTo[4 * QUARTER] + amplitude[4 * QUARTER];
  }

  /**
   * Three questions to the spectrum: how much of it do the harmonics hold, as it stands, by roots,
   * and with formants levelled; are the odd ones there (else the pitch is an octave higher); is
   * there as much between them (else it is lower)?
   */
  private double harmonicScore(int i) {
    double bins = Frames.hertz(cents[i]) / longWindow.hertzPerBin();
    double odd = 0;
    double even = 0;
    double between = 0;
    double power = 0;
    double roots = 0;
    double levels = 0;
    for (int h = 1; h <= HARMONICS && h * bins < amplitude.length - 1; h++) {
      int bin = (int) Math.round(h * bins);
      float value = amplitude[bin];
      roots += root[bin];
      levels += level[bin];
      power += value * value;
      if (h % 2 == 1) {
        odd += value;
      } else {
        even += value;
      }
      between += amplitude[(int) Math.round((h - 0.5) * bins)];
    }
    double harmonic = odd + even + 1e-9;
    loud[i] = 10 * Math.log10(power / ((double) LONG * LONG) + 1e-12);
    share[i] = harmonic / amplitudeSum;
    gap[i] = between / (harmonic + between);
    return PER_ODD_SHARE * Math.min(odd / harmonic, ODD_ENOUGH)
        + PER_BETWEEN_SHARE * gap[i]
        + PER_LOG_SHARE * Math.log(share[i] + 0.01)
        + PER_LOG_ROOT_SHARE * Math.log(roots / rootSum + 0.01)
        + PER_LOG_LEVEL_SHARE * Math.log(levels / levelSum + 0.01);
  }

  private double below(double mismatch) {
    int i = (int) (mismatch * TABLE);
    return i < 0 ? 0 : thresholds[Math.min(i, TABLE)];
  }

  /** Share of the power above 3 kHz: high in an s or a breath. */
  private static double bright(float[] power) {
    int split = power.length * 3 / 8;
    double low = 1e-12 + Sums.of(power, 1, split);
    double high = Sums.of(power, split, power.length);
    return high / (low + high);
  }

  private void keepCompressed(long number, float[] power) {
    float[] now = compressed(number);
    for (int k = 0; k < now.length; k++) {
      now[k] = (float) Math.sqrt(power[k]);
    }
    for (int k = 0; k < now.length; k++) {
      now[k] = (float) Math.sqrt(now[k]);
    }
  }

  /**
   * Spectral flux: how much of a frame's compressed spectrum is new against an earlier one, 0 to 1
   * (Bello et al. 2005, "A tutorial on onset detection in music signals").
   */
  double flux(long from, long to) {
    float[] before = compressed(from);
    float[] now = compressed(to);
    for (int k = 0; k < now.length; k++) {
      rises[k] = Math.max(0, now[k] - before[k]);
    }
    return Sums.of(rises, 2, now.length) / (1e-9 + Sums.of(now, 2, now.length));
  }

  private float[] compressed(long number) {
    return spectra[(int) Math.floorMod(number, (long) spectra.length)];
  }

  /** Takes for the spectrum of a frame that is not looked at what lies between two others'. */
  void passOver(long number, long from, long to) {
    float[] here = compressed(number);
    float[] before = compressed(from);
    float[] after = compressed(to);
    float way = (float) (number - from) / (to - from);
    for (int k = 0; k < here.length; k++) {
      here[k] = before[k] + way * (after[k] - before[k]);
    }
  }

  /** Writes what was found into a frame that outlives the next analysis. */
  void into(FrameView frame) {
    frame.count = kept;
    for (int i = 0; i < kept; i++) {
      frame.cents[i] = (float) cents[i];
      frame.logMass[i] = (float) Math.log(mass[i]);
      frame.clarity[i] = (float) peak[i];
      frame.harmonicDb[i] = (float) loud[i];
    }
    frame.favourite = favourite;
    frame.between = (float) (kept == 0 ? 1 : gap[favourite]);
    frame.levelDb = (float) levelDb;
    frame.aboveNoiseDb = (float) aboveNoiseDb;
    frame.brightness = (float) brightness;
    frame.inRest = false;
  }
}
