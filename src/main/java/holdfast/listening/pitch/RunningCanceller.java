package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.HannWindow;
import java.util.Arrays;

/**
 * Takes a known backing out of a take while both run; {@link BleedCanceller} for those who may not
 * look ahead. The same method, with what is learned fading slowly instead of being learned in
 * rounds: the delay by generalised cross-correlation (Knapp and Carter 1976), then one filter by
 * least squares in the frequency domain, in which a bin counts the less the more is left in it that
 * is not backing. What comes in goes out cleaned at once: the filter of the past is applied to the
 * present. Allocates nothing after it is made.
 */
public final class RunningCanceller {

  /** Samples of a stretch from which the filter is learned: 256 ms at the ear's rate. */
  private static final int STRETCH = 4096;

  private static final int HALF = STRETCH / 2;

  /** Samples from one stretch to the next: the filter is renewed every 64 ms. */
  private static final int HOP = STRETCH / 4;

  /** Samples of the filter: 100 ms, the early part of a room. */
  private static final int FILTER = 1600;

  /** Samples of the filter before the loudest arrival. */
  private static final int BEFORE = 32;

  /** Samples in which the delay is looked for: 1 s, and so up to half of that. */
  private static final int LOOK = 16_384;

  private static final int LOOK_HOP = LOOK / 4;

  private static final int LONGEST_DELAY = LOOK / 2;

  /** What was learned counts half after so many stretches: 10 s. Nobody moves faster for long. */
  private static final float KEEP = (float) Math.pow(0.5, HOP / (10.0 * 16_000));

  /** The same for the delay. */
  private static final float KEEP_LOOK = (float) Math.pow(0.5, LOOK_HOP / (10.0 * 16_000));

  /** A peak so many times over the mean of all lags is an arrival; chance gives 5. */
  private static final float CLEAR_PEAK = 9;

  /** Another delay must be found so many times in a row before everything is learned anew. */
  private static final int SURE_AFTER = 3;

  /** Samples by which a peak may move about while it is the same arrival. */
  private static final int SAME = 24;

  /** Share of the mean power that is added to each bin, so that empty bins learn nothing. */
  private static final double FLOOR = 1e-3;

  /**
   * What is left in a bin counts as at least this share of what is usual there. Without a bound, a
   * few stretches in which nothing was left would outweigh all that comes when the way changes.
   */
  private static final float LEAST_LEFT = 0.01f;

  /** The energies before and after are compared over about so many stretches: 1 s. */
  private static final double COMPARED = 16;

  /** So much more energy out than in is no chance of a singer's, but another way. */
  private static final double CLEARLY_MORE = 1.5;

  /** Stretches before the filter is used: one alone would be learned from the singer. */
  private static final int ENOUGH = 12;

  /** Below this power a stretch of the backing is silence: −80 dB of full scale. */
  private static final double SILENT = 1e-8 * STRETCH * STRETCH * 0.19;

  private final float[] take = new float[2 * LOOK];
  private final float[] known = new float[2 * LOOK];
  private final float[] left = new float[2 * LOOK];
  private int filled;
  private int sinceStretch;
  private int sinceLook;

  private final FloatFFT fft = new FloatFFT(STRETCH);
  private final float[] window = HannWindow.of(STRETCH);
  private final float[] x = new float[STRETCH];
  private final float[] y = new float[STRETCH];
  private final float[] e = new float[STRETCH];
  private final float[] rest = new float[HALF];
  private final float[] crossRe = new float[HALF];
  private final float[] crossIm = new float[HALF];
  private final float[] power = new float[HALF];
  private final float[] response = new float[STRETCH];
  private final float[] filter = new float[FILTER];
  private final float[] usual = new float[HALF];
  private double energyBefore;
  private double energyAfter;
  private boolean learned;
  private int stretches;

  private final FloatFFT lookFft = new FloatFFT(LOOK);
  private final float[] lookX = new float[LOOK];
  private final float[] lookY = new float[LOOK];
  private final float[] lookCross = new float[LOOK];
  private int delay = -1;
  private int other = -1;
  private int times;

  /** A canceller that has heard nothing. */
  public RunningCanceller() {}

  /**
   * Cleans a block of the take in place.
   *
   * @param block the next samples of the take, at the ear's rate
   * @param backing what was played: the sample that is heard at {@code block[i]} lies at {@code
   *     backing[i]} or up to half a second earlier
   */
  public void clean(float[] block, float[] backing, int count) {
    for (int done = 0; done < count; ) {
      int now = Math.min(count - done, Math.min(HOP - sinceStretch, LOOK_HOP - sinceLook));
      push(block, backing, done, now);
      done += now;
      sinceStretch = (sinceStretch + now) % HOP;
      sinceLook = (sinceLook + now) % LOOK_HOP;
      if (sinceLook == 0 && filled >= LOOK) {
        lookForDelay();
      }
      if (sinceStretch == 0 && delay >= 0 && filled >= STRETCH + delay) {
        learn();
      }
    }
  }

  private void push(float[] block, float[] backing, int from, int count) {
    if (filled + count > take.length) {
      int keep = LOOK;
      System.arraycopy(take, filled - keep, take, 0, keep);
      System.arraycopy(known, filled - keep, known, 0, keep);
      System.arraycopy(left, filled - keep, left, 0, keep);
      filled = keep;
    }
    for (int i = 0; i < count; i++) {
      float value = block[from + i];
      take[filled + i] = Float.isFinite(value) ? value : 0;
      known[filled + i] = backing[from + i];
    }
    System.arraycopy(take, filled, left, filled, count);
    if (learned) {
      subtract(count);
      System.arraycopy(left, filled, block, from, count);
    }
    filled += count;
  }

  /** A tap at a time over the whole block, which compilers turn into wide instructions. */
  private void subtract(int count) {
    int newest = filled - Math.max(0, delay - BEFORE);
    for (int tap = 0; tap < FILTER && newest - tap >= 0; tap++) {
      float gain = filter[tap];
      int at = newest - tap;
      for (int i = 0; i < count; i++) {
        left[filled + i] -= gain * known[at + i];
      }
    }
  }

  private void lookForDelay() {
    System.arraycopy(take, filled - LOOK, lookY, 0, LOOK);
    System.arraycopy(known, filled - LOOK, lookX, 0, LOOK);
    lookFft.realForward(lookY);
    lookFft.realForward(lookX);
    for (int k = 2; k < LOOK; k += 2) {
      lookCross[k] = KEEP_LOOK * lookCross[k] + lookX[k] * lookY[k] + lookX[k + 1] * lookY[k + 1];
      lookCross[k + 1] =
          KEEP_LOOK * lookCross[k + 1] + lookX[k] * lookY[k + 1] - lookX[k + 1] * lookY[k];
    }
    for (int k = 2; k < LOOK; k += 2) {
      float re = lookCross[k];
      float im = lookCross[k + 1];
      // Half a whitening: a full one lets bins without any backing speak as loud as the rest.
      float scale = (float) (1 / (Math.pow(re * re + im * im, 0.35) + 1e-12));
      lookX[k] = re * scale;
      lookX[k + 1] = im * scale;
    }
    lookX[0] = 0;
    lookX[1] = 0;
    lookFft.realInverse(lookX, true);
    int best = 0;
    float sum = 0;
    for (int lag = 0; lag < LONGEST_DELAY; lag++) {
      float size = Math.abs(lookX[lag]);
      sum += size;
      best = size > Math.abs(lookX[best]) ? lag : best;
    }
    boolean clear = Math.abs(lookX[best]) > CLEAR_PEAK * sum / LONGEST_DELAY;
    if (!clear || Math.abs(best - delay) <= SAME) {
      times = 0;
      return;
    }
    times = Math.abs(best - other) <= SAME ? times + 1 : 1;
    other = best;
    if (delay < 0 || times >= SURE_AFTER) {
      delay = best;
      forget();
    }
  }

  /** The way from the loudspeaker may have changed: learns it anew. */
  public void forget() {
    learned = false;
    stretches = 0;
    Arrays.fill(crossRe, 0);
    Arrays.fill(crossIm, 0);
    Arrays.fill(power, 0);
    energyBefore = 0;
    energyAfter = 0;
  }

  /** Whether more came out lately than went in: then the way has changed, and nothing is known. */
  private boolean adds() {
    double before = 0;
    double after = 0;
    for (int i = filled - HOP; i < filled; i++) {
      before += take[i] * take[i];
      after += left[i] * left[i];
    }
    energyBefore += (before - energyBefore) / COMPARED;
    energyAfter += (after - energyAfter) / COMPARED;
    return learned && energyAfter > CLEARLY_MORE * energyBefore;
  }

  private void learn() {
    int from = filled - STRETCH;
    cut(take, from, y);
    cut(left, from, e);
    int shift = Math.max(0, delay - BEFORE);
    cut(known, from - shift, x);
    fft.realForward(x);
    double loud = 0;
    for (int k = 2; k < STRETCH; k++) {
      loud += x[k] * x[k];
    }
    if (loud < SILENT) {
      return;
    }
    if (adds()) {
      forget();
      System.arraycopy(y, 0, e, 0, STRETCH);
    }
    fft.realForward(y);
    fft.realForward(e);
    for (int k = 1; k < HALF; k++) {
      float all = y[2 * k] * y[2 * k] + y[2 * k + 1] * y[2 * k + 1];
      usual[k] = KEEP * usual[k] + (1 - KEEP) * all;
      rest[k] = e[2 * k] * e[2 * k] + e[2 * k + 1] * e[2 * k + 1];
    }
    double mean = 0;
    for (int k = 1; k < HALF; k++) {
      float xr = x[2 * k];
      float xi = x[2 * k + 1];
      float yr = y[2 * k];
      float yi = y[2 * k + 1];
      float near = rest[k] + rest[Math.max(1, k - 1)] + rest[Math.min(HALF - 1, k + 1)] + 1e-7f;
      float weight = 1 / (near + LEAST_LEFT * usual[k]);
      crossRe[k] = KEEP * crossRe[k] + weight * (xr * yr + xi * yi);
      crossIm[k] = KEEP * crossIm[k] + weight * (xr * yi - xi * yr);
      power[k] = KEEP * power[k] + weight * (xr * xr + xi * xi);
      mean += power[k];
    }
    double floor = FLOOR * mean / HALF + 1e-12;
    Arrays.fill(response, 0);
    for (int k = 1; k < HALF; k++) {
      response[2 * k] = (float) (crossRe[k] / (power[k] + floor));
      response[2 * k + 1] = (float) (crossIm[k] / (power[k] + floor));
    }
    fft.realInverse(response, true);
    System.arraycopy(response, 0, filter, 0, FILTER);
    stretches++;
    learned = stretches >= ENOUGH;
  }

  private void cut(float[] from, int start, float[] to) {
    for (int i = 0; i < STRETCH; i++) {
      to[i] = start + i >= 0 ? from[start + i] * window[i] : 0;
    }
  }

  /** Samples between a sound's place in the backing and in the take; negative: not found yet. */
  int delay() {
    return delay;
  }
}
