package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.util.ArrayList;
import java.util.List;

/** Lays a take onto the backing to a few milliseconds, by where things begin. */
final class FineByOnsets {

  /** Frames a second. */
  private static final int RATE = 200;

  private static final int HOP = Resampler.EAR_RATE / RATE;

  /** 32 ms. */
  private static final int WINDOW = 512;

  private static final int BANDS = 6;

  /** A stretch of the take that is compared at once, and from one to the next: 8 s and 3 s. */
  private static final int STRETCH = 8 * RATE;

  private static final int STEP = 3 * RATE;

  /** How far off the coarse place may be, in frames: 250 ms. */
  private static final int REACH = RATE / 4;

  /** So much more of the backing than the coarse line asks for may be needed. */
  private static final double FARTHER = 1.003;

  private static final double SPARE_SECONDS = 2;

  private FineByOnsets() {}

  static float[][] rows(EarSound sound, long samples) {
    int frames = (int) (samples / HOP);
    float[][] rows = new float[BANDS][Math.max(1, frames)];
    new OnsetStrength(WINDOW, HOP, BANDS).of(sound, 0, frames, rows);
    return rows;
  }

  /**
   * A line for the whole of what was looked at.
   *
   * @param takeSamples how much of the take is looked at, at the ear's rate
   */
  static LineFit fit(EarSound take, long takeSamples, RenderedBacking backing, TimeLine coarse) {
    long looked = Math.min(takeSamples, take.length());
    double end = coarse.backing((double) looked / Resampler.EAR_RATE) * FARTHER + SPARE_SECONDS;
    float[][] heard = rows(take, looked);
    float[][] known = backing.onsets(Math.max(0, end));
    TimeLine line = coarse;
    LineFit fit = new LineFit(coarse, 0, 0, 0);
    // The second time the windows are laid by the better line, and reach less far.
    for (int reach : new int[] {REACH, REACH / 5}) {
      List<LineFit.Point> points = new ArrayList<>();
      for (int from = 0; from + STRETCH <= heard[0].length; from += STEP) {
        point(heard, known, from, line, reach, points);
      }
      fit = LineFit.of(points, line, reach == REACH ? 0.02 : 0.008);
      line = fit.line();
    }
    return fit;
  }

  private static void point(
      float[][] heard,
      float[][] known,
      int from,
      TimeLine line,
      int reach,
      List<LineFit.Point> points) {
    double firstBacking = line.backing((double) from / RATE) * RATE;
    double step = 1 / line.stretch();
    if (firstBacking - reach < 0 || firstBacking + STRETCH * step + reach + 2 > known[0].length) {
      return;
    }
    double[] likeness = new double[2 * reach + 1];
    float[] a = new float[STRETCH];
    float[] b = new float[STRETCH + 2 * reach];
    for (int band = 0; band < BANDS; band++) {
      System.arraycopy(heard[band], from, a, 0, STRETCH);
      for (int i = 0; i < b.length; i++) {
        double at = firstBacking + (i - reach) * step;
        int low = (int) at;
        float share = (float) (at - low);
        b[i] = (1 - share) * known[band][low] + share * known[band][low + 1];
      }
      double energyA = centre(a);
      double energyB = centre(b);
      double scale = 1 / Math.sqrt(energyA * energyB + 1e-12);
      for (int lag = 0; lag <= 2 * reach; lag++) {
        likeness[lag] += product(a, b, lag) * scale;
      }
    }
    int best = 0;
    double mean = 0;
    for (int lag = 0; lag < likeness.length; lag++) {
      best = likeness[lag] > likeness[best] ? lag : best;
      mean += likeness[lag] / likeness.length;
    }
    double clear = (likeness[best] - mean) / BANDS;
    if (clear < 0.02 || best == 0 || best == likeness.length - 1) {
      return;
    }
    double place = best + Peak.offset(likeness[best - 1], likeness[best], likeness[best + 1]);
    double middleTake = (from + STRETCH / 2.0) / RATE;
    double middleBacking = line.backing(middleTake) + (place - reach) * step / RATE;
    points.add(new LineFit.Point(middleBacking, middleTake, clear));
  }

  /** Two sums, so that no addition waits for the one before it. */
  private static double product(float[] a, float[] b, int lag) {
    double even = 0;
    double odd = 0;
    for (int i = 0; i < STRETCH; i += 2) {
      even += a[i] * b[i + lag];
      odd += a[i + 1] * b[i + 1 + lag];
    }
    return even + odd;
  }

  private static double centre(float[] row) {
    double mean = 0;
    for (float value : row) {
      mean += value / row.length;
    }
    double energy = 0;
    for (int i = 0; i < row.length; i++) {
      row[i] -= (float) mean;
      energy += row[i] * row[i];
    }
    return energy;
  }
}
