package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.util.Arrays;

/**
 * A sound as rows of features over time: the pitch classes that sound, in thirds of a semitone
 * (chroma; Fujishima 1999, "Realtime chord recognition of musical sound"), and how strongly
 * something begins in each of some bands (spectral flux; Bello et al. 2005, "A tutorial on onset
 * detection in music signals"). Every row has mean 0; all chroma rows together have the energy 1 a
 * frame on average, and so have the onset rows.
 */
final class SoundPrint {

  /** Frames a second. */
  static final int RATE = 50;

  /** Chroma rows: three to a semitone, so that a take a little out of tune still fits. */
  static final int CHROMA = 36;

  /** Onset rows. */
  static final int BANDS = 8;

  private static final int HOP = Resampler.EAR_RATE / RATE;

  /** Half a second at half the ear's rate: semitones stand apart from 130 Hz on. */
  private static final int LONG = 4096;

  /** 64 ms. */
  private static final int SHORT = 1024;

  /** A chroma frame is worked out every tenth of a second, and those between are drawn. */
  private static final int CHROMA_EVERY = 5;

  /** What the chroma looks at: over the mud of small loudspeakers, under the cymbals. */
  private static final double LOWEST_HZ = 120;

  private static final double HIGHEST_HZ = 2000;

  private final float[][] rows;
  private final int frames;

  private SoundPrint(float[][] rows, int frames) {
    this.rows = rows;
    this.frames = frames;
  }

  int frames() {
    return frames;
  }

  float[] row(int number) {
    return rows[number];
  }

  static int rowCount() {
    return CHROMA + BANDS;
  }

  /** The print of a stretch of a sound. */
  static SoundPrint of(EarSound sound, long from, long count) {
    int frames = (int) (count / HOP);
    float[][] rows = new float[rowCount()][Math.max(1, frames)];
    chroma(sound, from, frames, rows);
    onsets(sound, from, frames, rows);
    return new SoundPrint(rows, frames);
  }

  private static float[] window(int length) {
    float[] window = new float[length];
    for (int i = 0; i < length; i++) {
      window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length));
    }
    return window;
  }

  private static void chroma(EarSound sound, long from, int frames, float[][] rows) {
    // From half a window before the first.
    float[] half = HalfRate.read(sound, from - LONG, (frames + CHROMA_EVERY) * HOP / 2 + LONG);
    float[] window = window(LONG);
    FloatFFT fft = new FloatFFT(LONG);
    float[] work = new float[LONG];
    int first = (int) Math.ceil(LOWEST_HZ * LONG / HalfRate.RATE);
    int last = (int) (HIGHEST_HZ * LONG / HalfRate.RATE);
    int[] low = new int[last + 1];
    float[] share = new float[last + 1];
    for (int k = first; k <= last; k++) {
      double place = CHROMA * Math.log((double) k * HalfRate.RATE / LONG / 440) / Math.log(2);
      low[k] = Math.floorMod((int) Math.floor(place), CHROMA);
      share[k] = (float) (place - Math.floor(place));
    }
    float[] size = new float[last + 1];
    double[] now = new double[CHROMA + 1];
    float[] before = new float[CHROMA];
    double energy = 0;
    for (int frame = 0; frame < frames + CHROMA_EVERY; frame += CHROMA_EVERY) {
      for (int i = 0; i < LONG; i++) {
        work[i] = half[frame * HOP / 2 + i] * window[i];
      }
      fft.realForward(work);
      for (int k = first; k <= last; k++) {
        size[k] = work[2 * k] * work[2 * k] + work[2 * k + 1] * work[2 * k + 1];
      }
      // The root of the amplitude tames a voice in front of a soft backing.
      for (int k = first; k <= last; k++) {
        size[k] = (float) Math.sqrt((float) Math.sqrt(size[k]));
      }
      Arrays.fill(now, 0);
      for (int k = first; k <= last; k++) {
        now[low[k]] += (1 - share[k]) * size[k];
        now[low[k] + 1] += share[k] * size[k];
      }
      now[0] += now[CHROMA];
      now[CHROMA] = 0;
      double mean = 0;
      for (double value : now) {
        mean += value / CHROMA;
      }
      double sum = 0;
      for (int c = 0; c < CHROMA; c++) {
        now[c] -= mean;
        sum += now[c] * now[c];
      }
      double scale = 1 / Math.sqrt(sum + 1e-3);
      for (int c = 0; c < CHROMA; c++) {
        float value = (float) (now[c] * scale);
        for (int back = 0; back < CHROMA_EVERY; back++) {
          int at = frame - back;
          if (at >= 0 && at < frames) {
            float old = (float) back / CHROMA_EVERY;
            rows[c][at] = (1 - old) * value + old * before[c];
          }
        }
        before[c] = value;
      }
    }
    for (int c = 0; c < CHROMA; c++) {
      energy += centre(rows[c]);
    }
    scale(rows, 0, CHROMA, energy, frames);
  }

  private static void onsets(EarSound sound, long from, int frames, float[][] rows) {
    OnsetStrength strength = new OnsetStrength(SHORT, HOP, BANDS);
    float[][] bands = new float[BANDS][];
    for (int b = 0; b < BANDS; b++) {
      bands[b] = rows[CHROMA + b];
    }
    strength.of(sound, from, frames, bands);
    double energy = 0;
    for (float[] band : bands) {
      // Each band speaks as loud as the others.
      double own = centre(band);
      scale(new float[][] {band}, 0, 1, own, frames);
      energy += own > 0 ? frames : 0;
    }
    scale(rows, CHROMA, CHROMA + BANDS, energy, frames);
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

  private static void scale(float[][] rows, int from, int to, double energy, int frames) {
    float scale = (float) (energy > 0 ? Math.sqrt(frames / energy) : 0);
    for (int r = from; r < to; r++) {
      for (int i = 0; i < rows[r].length; i++) {
        rows[r][i] *= scale;
      }
    }
  }
}
