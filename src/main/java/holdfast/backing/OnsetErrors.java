package holdfast.backing;

import holdfast.backing.sound.StreamSynth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How far from its beat does each onset of a captured backing fall, relative to the first?
 *
 * <p>The same performance is rendered offline, where every onset lies on its sample; around each
 * onset the capture is shifted against the rendering until both agree best (normalised
 * cross-correlation, with a parabola through the peak for what lies between samples).
 *
 * @param millis in order of onset; the first is 0
 * @param worstLikeness how alike capture and rendering are at the least like onset; 1 is the same
 */
public record OnsetErrors(List<Double> millis, double worstLikeness) {

  private static final double RATE = StreamSynth.FORMAT.getFrameRate();

  /** The attack and a little of what follows. */
  private static final int WINDOW = (int) (0.050 * RATE);

  /** An onset further away than this is not found, which is told by its likeness. */
  private static final int REACH = (int) (0.050 * RATE);

  /** A hundredth of full scale: above what a quiet device adds. */
  private static final float SOUND = 0.001f;

  /** Copies. */
  public OnsetErrors {
    millis = List.copyOf(millis);
  }

  /**
   * Finds every onset.
   *
   * @param played what was captured, one channel
   * @param rendered what should be there, one channel, second 0 at the performance's first beat
   * @param seconds the onsets in the rendering, in increasing order; of those closer than the
   *     window only the first counts
   * @return empty where the capture holds nothing
   */
  public static Optional<OnsetErrors> find(float[] played, float[] rendered, double[] seconds) {
    int start = firstSound(played);
    int expected = firstSound(rendered);
    if (start == played.length || expected == rendered.length) {
      return Optional.empty();
    }
    int shift = start - expected;
    double first = Double.NaN;
    double worst = 1;
    List<Double> millis = new ArrayList<>();
    for (double onset : seconds) {
      int frame = (int) Math.round(onset * RATE);
      Match match = match(played, rendered, frame, shift);
      worst = Math.min(worst, match.likeness());
      if (millis.isEmpty()) {
        first = match.shift();
        shift = (int) Math.round(first);
      }
      millis.add((match.shift() - first) * 1000 / RATE);
    }
    return Optional.of(new OnsetErrors(millis, worst));
  }

  /** The largest error either way, in milliseconds. */
  public double maxMillis() {
    return millis.stream().mapToDouble(Math::abs).max().orElse(0);
  }

  /** Half of the onsets are nearer to their beats, in milliseconds. */
  public double medianMillis() {
    double[] sorted = millis.stream().mapToDouble(Math::abs).sorted().toArray();
    return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
  }

  private static int firstSound(float[] samples) {
    int i = 0;
    while (i < samples.length && Math.abs(samples[i]) < SOUND) {
      i++;
    }
    return i;
  }

  /**
   * Where capture and rendering agree.
   *
   * @param shift of the capture against the rendering, in frames
   */
  private record Match(double shift, double likeness) {}

  private static Match match(float[] played, float[] rendered, int frame, int shift) {
    int length = Math.min(WINDOW, rendered.length - frame);
    double renderedPower = power(rendered, frame, length);
    double[] likeness = new double[2 * REACH + 1];
    Arrays.fill(likeness, -1);
    int best = 0;
    for (int away = -REACH; away <= REACH; away++) {
      int from = frame + shift + away;
      if (from >= 0 && from + length <= played.length) {
        double together = 0;
        double playedPower = 0;
        for (int i = 0; i < length; i++) {
          float x = played[from + i];
          together += x * rendered[frame + i];
          playedPower += x * x;
        }
        likeness[away + REACH] = together / Math.sqrt(playedPower * renderedPower + 1e-12);
        best = likeness[away + REACH] > likeness[best] ? away + REACH : best;
      }
    }
    double fine = 0;
    if (best > 0 && best < 2 * REACH) {
      double curve = likeness[best - 1] - 2 * likeness[best] + likeness[best + 1];
      fine = curve < 0 ? 0.5 * (likeness[best - 1] - likeness[best + 1]) / curve : 0;
    }
    return new Match(shift + best - REACH + fine, likeness[best]);
  }

  private static double power(float[] samples, int from, int length) {
    double power = 0;
    for (int i = from; i < from + length; i++) {
      power += samples[i] * samples[i];
    }
    return power;
  }
}
