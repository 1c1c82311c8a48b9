package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  /** The most stretches that are looked at. */
  private static final int MOST = 40;

  /** A power of two, longer than a stretch by more than any lag that is looked at. */
  private static final int SIZE = 1 << 16;

  /** Under and over this the correlation is blind: chords and bass are told, cymbals are not. */
  private static final double LOWEST_HZ = 100;

  private static final double HIGHEST_HZ = 2500;

  private static final int FIRST = (int) (LOWEST_HZ * SIZE / Resampler.EAR_RATE);

  private static final int LAST = (int) (HIGHEST_HZ * SIZE / Resampler.EAR_RATE);

  /** How much of the whitening is done: all of it would let empty bins speak. */
  private static final double WHITENING = 0.7;

  /** Lags that are the place itself: 2 ms, echoes of the room among them. */
  private static final int SAME_PLACE = Resampler.EAR_RATE / 500;

  /** So far must the likeness at the place stand out of the likeness around it. */
  private static final double STANDS_OUT = 3;

  private final EarSound take;
  private final EarSound backing;
  private final long takeSamples;
  private final FloatFFT fft = new FloatFFT(SIZE);
  private final float[] window = new float[STRETCH];

  /** Spectra of the take's stretches by their starts, up to {@link #HIGHEST_HZ}; none: silence. */
  private final Map<Long, Optional<float[]>> spectra = new HashMap<>();

  private final float[] known = new float[SIZE];

  FineBySound(EarSound take, long takeSamples, EarSound backing) {
    this.take = take;
    this.takeSamples = Math.min(takeSamples, take.length());
    this.backing = backing;
    for (int i = 0; i < STRETCH; i++) {
      window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / STRETCH));
    }
  }

  /** The line, tightened step by step. */
  LineFit fit(TimeLine from) {
    TimeLine line = from;
    LineFit fit = new LineFit(from, 0, 0, 0);
    double[] reaches = {0.04, 0.01, 0.004};
    double[] tolerances = {0.006, 0.002, 0.0008};
    for (int round = 0; round < reaches.length; round++) {
      fit = LineFit.of(points(line, reaches[round]), line, tolerances[round]);
      line = fit.line();
    }
    return fit;
  }

  /**
   * Whether the backing sounds in the take from a second of it on: 4 s of both are most alike where
   * the line says so, and not elsewhere.
   */
  boolean sounds(double takeSeconds, TimeLine line) {
    long start = Math.round(takeSeconds * Resampler.EAR_RATE);
    if (start < 0 || start >= take.length() || !correlate(start, line)) {
      return false;
    }
    int reach = (int) (0.04 * Resampler.EAR_RATE);
    int best = likest(reach);
    return Math.abs(best) <= SAME_PLACE && value(best) > STANDS_OUT * around(reach);
  }

  private long[] starts() {
    int count = (int) Math.max(1, Math.min(MOST, (takeSamples - STRETCH) / (STRETCH / 2) + 1));
    long[] starts = new long[count];
    for (int i = 0; i < count; i++) {
      starts[i] = count == 1 ? 0 : i * (takeSamples - STRETCH) / (count - 1);
    }
    return starts;
  }

  private List<LineFit.Point> points(TimeLine line, double reachSeconds) {
    List<LineFit.Point> points = new ArrayList<>();
    int reach = (int) Math.ceil(reachSeconds * Resampler.EAR_RATE);
    for (long start : starts()) {
      if (!correlate(start, line)) {
        continue;
      }
      int best = likest(reach);
      if (Math.abs(best) == reach) {
        continue;
      }
      double place = best + Peak.offset(value(best - 1), value(best), value(best + 1));
      double middle = (start + STRETCH / 2.0) / Resampler.EAR_RATE;
      double off = place / Resampler.EAR_RATE / line.stretch();
      points.add(
          new LineFit.Point(line.backing(middle) - off, middle, value(best) / around(reach)));
    }
    return points;
  }

  /** The spectrum of a stretch of the take, the same in every round. */
  private Optional<float[]> spectrum(long start) {
    float[] heard = new float[SIZE];
    take.read(start, heard, 0, STRETCH);
    double energy = 0;
    for (int i = 0; i < STRETCH; i++) {
      heard[i] = Float.isFinite(heard[i]) ? heard[i] * window[i] : 0;
      energy += heard[i] * heard[i];
    }
    if (energy < 1e-6) {
      return Optional.empty();
    }
    fft.realForward(heard);
    return Optional.of(Arrays.copyOf(heard, 2 * LAST + 2));
  }

  private double value(int lag) {
    return known[Math.floorMod(lag, SIZE)];
  }

  /** The lag at which both are most alike, none further away than the reach. */
  private int likest(int reach) {
    int best = -reach;
    for (int lag = -reach; lag <= reach; lag++) {
      best = value(lag) > value(best) ? lag : best;
    }
    return best;
  }

  /** Root mean square of the likeness within the reach. */
  private double around(int reach) {
    double sum = 0;
    for (int lag = -reach; lag <= reach; lag++) {
      sum += value(lag) * value(lag);
    }
    return Math.sqrt(sum / (2 * reach + 1)) + 1e-12;
  }

  /**
   * Correlates a stretch of the take with the backing where the line puts it; leaves the
   * correlation, by how much later the take has it, in {@link #known}. The height is 1 for
   * identical sounds.
   *
   * @return whether there is any sound in both
   */
  private boolean correlate(long start, TimeLine line) {
    Optional<float[]> spectrum = spectra.computeIfAbsent(start, this::spectrum);
    double from = line.backing((double) start / Resampler.EAR_RATE) * Resampler.EAR_RATE;
    Stretched.read(backing, from, 1 / line.stretch(), known, STRETCH);
    double energy = 0;
    for (int i = 0; i < STRETCH; i++) {
      known[i] *= window[i];
      energy += known[i] * known[i];
    }
    Arrays.fill(known, STRETCH, SIZE, 0);
    if (spectrum.isEmpty() || energy < 1e-3) {
      return false;
    }
    float[] heard = spectrum.orElseThrow();
    fft.realForward(known);
    double height = 0;
    Arrays.fill(known, 0, 2 * FIRST, 0);
    Arrays.fill(known, 2 * LAST + 2, SIZE, 0);
    for (int k = FIRST; k <= LAST; k++) {
      float hr = heard[2 * k];
      float hi = heard[2 * k + 1];
      float kr = known[2 * k];
      float ki = known[2 * k + 1];
      float re = hr * kr + hi * ki;
      float im = hi * kr - hr * ki;
      double power = (double) re * re + (double) im * im;
      double scale = 1 / (Math.pow(power, 0.5 * WHITENING) + 1e-9);
      height += Math.sqrt(power) * scale;
      known[2 * k] = (float) (re * scale);
      known[2 * k + 1] = (float) (im * scale);
    }
    fft.realInverse(known, true);
    float most = (float) (2 * height / SIZE + 1e-12);
    for (int i = 0; i < SIZE; i++) {
      known[i] /= most;
    }
    return true;
  }
}
