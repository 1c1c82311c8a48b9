package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.HannWindow;
import holdfast.listening.audio.Resampler;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Lays a take onto the very sound that was played, to a part of a millisecond: generalised
 * cross-correlation of short stretches (Knapp and Carter 1976), half whitened. Works where the take
 * holds our own rendered backing and not another performance of it; it says which.
 */
final class FineBySound {

  /** A stretch of the take that is compared at once. */
  static final int STRETCH_SECONDS = 4;

  private static final int STRETCH = STRETCH_SECONDS * Resampler.EAR_RATE;

  /** A stretch with what halving its rate needs around it. */
  private static final int READ = STRETCH + 2 * HalfRate.REACH;

  /** A stretch at half the ear's rate, which holds all that is compared. */
  private static final int HALVED = STRETCH_SECONDS * HalfRate.RATE;

  /** From one stretch of the backing to the next. */
  private static final int APART = STRETCH / 2;

  /** The most stretches that are looked at. */
  private static final int MOST = 40;

  /** So many are looked at while the line is only near. */
  private static final int FEW = 16;

  /** Lines whose stretches differ by less put a stretch's end in the same place, to a sample. */
  private static final double SAME_STRETCH = 4e-6;

  /** A power of two, longer than a halved stretch by more than any lag that is looked at. */
  private static final int SIZE = 1 << 15;

  /** Under and over this the correlation is blind: chords and bass are told, cymbals are not. */
  private static final double LOWEST_HZ = 100;

  private static final double HIGHEST_HZ = 2500;

  private static final int FIRST = (int) (LOWEST_HZ * SIZE / HalfRate.RATE);

  private static final int LAST = (int) (HIGHEST_HZ * SIZE / HalfRate.RATE);

  /** Holds tables only, so that all threads may use it. */
  private static final FloatFFT FFT = new FloatFFT(SIZE);

  private static final float[] WINDOW = window();

  /** The farthest that is looked from where the line says, in seconds, and then less far. */
  private static final double[] REACHES = {0.04, 0.01, 0.004};

  private static final double[] TOLERANCES = {0.006, 0.002, 0.0008};

  /** Lags that are the place itself: 2 ms, echoes of the room among them. */
  private static final int SAME_PLACE = HalfRate.RATE / 500;

  /** So far must the likeness at the place stand out of the likeness around it. */
  private static final double STANDS_OUT = 3;

  private final EarSound take;
  private final RenderedBacking backing;
  private final long takeSamples;

  FineBySound(EarSound take, long takeSamples, RenderedBacking backing) {
    this.take = take;
    this.takeSamples = Math.min(takeSamples, take.length());
    this.backing = backing;
  }

  /** Silent around the stretch. */
  private static float[] window() {
    float[] window = new float[READ];
    System.arraycopy(HannWindow.of(STRETCH), 0, window, HalfRate.REACH, STRETCH);
    return window;
  }

  /**
   * How alike a stretch of the backing and the take are, by lags around where a line puts it, in
   * samples at half the ear's rate.
   */
  private static final class Likeness {

    private final long start;
    private final TimeLine line;
    private final float[] byLag;

    Likeness(long start, TimeLine line, float[] byLag) {
      this.start = start;
      this.line = line;
      this.byLag = byLag;
    }

    int reach() {
      return byLag.length / 2;
    }

    double value(int lag) {
      return byLag[lag + reach()];
    }

    /** The lag at which both are most alike. */
    int likest(int from, int to) {
      int best = from;
      for (int lag = from; lag <= to; lag++) {
        best = value(lag) > value(best) ? lag : best;
      }
      return best;
    }

    /** Root mean square. */
    double around(int from, int to) {
      double sum = 0;
      for (int lag = from; lag <= to; lag++) {
        sum += value(lag) * value(lag);
      }
      return Math.sqrt(sum / (to - from + 1)) + 1e-12;
    }

    /** Where this puts the middle of the stretch, if it is no farther than this from a line. */
    Optional<LineFit.Point> point(TimeLine near, double reachSeconds) {
      double middle = (start + STRETCH / 2.0) / Resampler.EAR_RATE;
      double off = (near.take(middle) - line.take(middle)) / line.stretch() * HalfRate.RATE;
      int reach = (int) Math.ceil(reachSeconds * HalfRate.RATE);
      int from = (int) Math.max(1 - reach(), Math.rint(off) - reach);
      int to = (int) Math.min(reach() - 1, Math.rint(off) + reach);
      int best = from < to ? likest(from, to) : from;
      if (best == from || best == to) {
        return Optional.empty();
      }
      double place = best + Peak.offset(value(best - 1), value(best), value(best + 1));
      double there = line.take(middle + place / HalfRate.RATE);
      return Optional.of(new LineFit.Point(middle, there, value(best) / around(from, to)));
    }
  }

  /** The line, tightened step by step. */
  LineFit fit(TimeLine from) {
    List<Likeness> few = likenesses(from, FEW);
    LineFit fit = fit(few, fit(few, from, 0).line(), 1);
    List<Likeness> all = likenesses(fit.line(), MOST);
    for (int round = 1; round < REACHES.length; round++) {
      TimeLine line = fit.line();
      if (!all.isEmpty() && Math.abs(all.get(0).line.stretch() - line.stretch()) > SAME_STRETCH) {
        all = likenesses(line, MOST);
      }
      fit = fit(all, line, round);
    }
    return fit;
  }

  private static LineFit fit(List<Likeness> all, TimeLine line, int round) {
    List<LineFit.Point> points = new ArrayList<>();
    for (Likeness likeness : all) {
      likeness.point(line, REACHES[round]).ifPresent(points::add);
    }
    return LineFit.of(points, line, TOLERANCES[round]);
  }

  /**
   * Whether the backing sounds in the take from a second of it on: 4 s of both are most alike where
   * the line says so, and not elsewhere.
   */
  boolean sounds(double takeSeconds, TimeLine line) {
    if (takeSeconds < 0 || takeSeconds >= take.seconds()) {
      return false;
    }
    long start = Math.round(line.backing(takeSeconds) * Resampler.EAR_RATE);
    return spectrum(backing, start)
        .flatMap(known -> likeness(start, known, line))
        .filter(FineBySound::standsOut)
        .isPresent();
  }

  private static boolean standsOut(Likeness likeness) {
    int reach = likeness.reach();
    int best = likeness.likest(-reach, reach);
    return Math.abs(best) <= SAME_PLACE
        && likeness.value(best) > STANDS_OUT * likeness.around(-reach, reach);
  }

  /** The sample of the backing at which a stretch begins. */
  static long start(int stretch) {
    return (long) stretch * APART;
  }

  /** Those of the stretches of the backing that lie in the take, evenly spread. */
  private List<Likeness> likenesses(TimeLine line, int most) {
    double end = (double) takeSamples / Resampler.EAR_RATE;
    double apart = (double) APART / Resampler.EAR_RATE;
    int first = (int) Math.max(0, Math.ceil(line.backing(0) / apart));
    double farthest = Math.min(line.backing(end), backing.seconds()) - STRETCH_SECONDS;
    int last = (int) Math.floor(farthest / apart);
    int count = Math.min(most, last - first + 1);
    List<Likeness> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int stretch = count == 1 ? first : first + (int) ((long) i * (last - first) / (count - 1));
      backing
          .spectrum(stretch)
          .flatMap(known -> likeness(start(stretch), known, line))
          .ifPresent(all::add);
    }
    return all;
  }

  /** A spectrum from {@link #LOWEST_HZ} to {@link #HIGHEST_HZ}, whitened; none: silence. */
  static Optional<float[]> spectrum(EarSound sound, long start) {
    float[] samples = sound.samples(start - HalfRate.REACH, READ);
    return spectrum(samples, new float[SIZE], 1e-3);
  }

  /** The same of {@link #READ} samples in memory, by way of an empty {@link #SIZE}. */
  private static Optional<float[]> spectrum(float[] samples, float[] work, double silence) {
    double energy = 0;
    for (int i = 0; i < READ; i++) {
      samples[i] = Float.isFinite(samples[i]) ? samples[i] * WINDOW[i] : 0;
      energy += samples[i] * samples[i];
    }
    if (energy < silence) {
      return Optional.empty();
    }
    HalfRate.halve(samples, work, HALVED);
    FFT.realForward(work);
    float[] white = Arrays.copyOfRange(work, 2 * FIRST, 2 * LAST + 2);
    for (int k = 0; k < white.length; k += 2) {
      float power = white[k] * white[k] + white[k + 1] * white[k + 1];
      // Three quarters of the whitening: all of it would let empty bins speak.
      float root = (float) Math.sqrt(Math.sqrt(power));
      float scale = 1 / (root * (float) Math.sqrt(root) + 1e-9f);
      white[k] *= scale;
      white[k + 1] *= scale;
    }
    return Optional.of(white);
  }

  /** The height is 1 for identical sounds; a positive lag: the take has it later. */
  private Optional<Likeness> likeness(long start, float[] known, TimeLine line) {
    double first = (double) (start - HalfRate.REACH) / Resampler.EAR_RATE;
    float[] raw = new float[READ];
    Stretched.read(take, line.take(first) * Resampler.EAR_RATE, line.stretch(), raw, READ);
    float[] work = new float[SIZE];
    return spectrum(raw, work, 1e-6)
        .map(
            heard -> {
              Arrays.fill(work, 0);
              double height = 0;
              for (int k = 0; k < known.length; k += 2) {
                float re = heard[k] * known[k] + heard[k + 1] * known[k + 1];
                float im = heard[k + 1] * known[k] - heard[k] * known[k + 1];
                work[2 * FIRST + k] = re;
                work[2 * FIRST + k + 1] = im;
                height += (float) Math.sqrt(re * re + im * im);
              }
              FFT.realInverse(work, true);
              int reach = (int) Math.ceil(REACHES[0] * HalfRate.RATE) + 1;
              float[] byLag = new float[2 * reach + 1];
              float most = (float) (2 * height / SIZE + 1e-12);
              for (int lag = -reach; lag <= reach; lag++) {
                byLag[lag + reach] = work[Math.floorMod(lag, SIZE)] / most;
              }
              return new Likeness(start, line, byLag);
            });
  }
}
