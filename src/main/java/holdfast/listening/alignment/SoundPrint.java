package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;

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

  /** 64 ms. */
  private static final int SHORT = 1024;

  /** A chroma frame is worked out every tenth of a second, and those between are drawn. */
  private static final int CHROMA_EVERY = 5;

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

  private static void chroma(EarSound sound, long from, int frames, float[][] rows) {
    // From half a window before the first.
    float[] half =
        HalfRate.read(sound, from - Chroma.SPAN, (frames + CHROMA_EVERY) * HOP / 2 + Chroma.SPAN);
    Chroma chroma = new Chroma(CHROMA);
    float[] before = new float[CHROMA];
    float[] now = new float[CHROMA];
    for (int frame = 0; frame < frames + CHROMA_EVERY; frame += CHROMA_EVERY) {
      chroma.of(half, frame * HOP / 2, now);
      for (int back = 0; back < CHROMA_EVERY; back++) {
        int at = frame - back;
        if (at >= 0 && at < frames) {
          float old = (float) back / CHROMA_EVERY;
          for (int c = 0; c < CHROMA; c++) {
            rows[c][at] = (1 - old) * now[c] + old * before[c];
          }
        }
      }
      System.arraycopy(now, 0, before, 0, CHROMA);
    }
    double energy = 0;
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
