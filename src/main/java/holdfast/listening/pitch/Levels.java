package holdfast.listening.pitch;

import java.util.Arrays;

/**
 * How loud a singer and what lies around the singer are, at the start of a take.
 *
 * @param voiceDb where the singing usually stands, decibels under full scale, as {@link
 *     #decibels(double)} counts
 * @param backgroundDb where the rests stand: the room, or a backing from a loudspeaker
 */
public record Levels(double voiceDb, double backgroundDb) {

  /** Before anything is known: a voice at a healthy recording level in a quiet room. */
  public static final Levels UNKNOWN = new Levels(-26, -66);

  /** Decibels under full scale that count as silence when loudness is told from 0 to 1. */
  public static final double SILENT_DB = 60;

  /** Of all stretches, the loudest tenth shows the voice and the softest tenth the rests. */
  private static final double VOICE_SHARE = 0.9;

  private static final double BACKGROUND_SHARE = 0.1;

  /** Stretches of 40 ms, shorter than any rest between notes. */
  private static final int STRETCH = 8 * Frames.HOP;

  /** The voice stands at least this far over what lies around it, or it could not be followed. */
  static final double LEAST_DISTANCE_DB = 14;

  /** The window's own loss: mean of the Hann window's square, as the frame analysis has it. */
  private static final double WINDOW_LOSS = 0.24;

  /** Decibels of a mean square, on the scale of the frame analysis. */
  public static double decibels(double meanSquare) {
    return 10 * Math.log10(WINDOW_LOSS * meanSquare + 1e-12);
  }

  /** Decibels of so many samples from one on, on the same scale. */
  static double decibels(float[] samples, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      float value = samples[i];
      sum += Float.isFinite(value) ? value * value : 0;
    }
    return decibels(sum / count);
  }

  /** Loudness from 0 to 1 of a level in decibels under full scale. */
  public static double loudness(double levelDb) {
    return Math.max(0, Math.min(1, 1 + levelDb / SILENT_DB));
  }

  /** Listens to the first {@code length} samples, at the ear's rate, as a file allows. */
  public static Levels of(float[] samples, int length) {
    int count = length / STRETCH;
    if (count < 10) {
      return UNKNOWN;
    }
    double[] levels = new double[count];
    for (int i = 0; i < count; i++) {
      levels[i] = decibels(samples, i * STRETCH, STRETCH);
    }
    Arrays.sort(levels);
    return new Levels(
        levels[(int) (count * VOICE_SHARE)], levels[(int) (count * BACKGROUND_SHARE)]);
  }
}
