package holdfast.listening.calibration;

import holdfast.mistake.UserMistake;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How late sound is heard, by how a person taps along to it.
 *
 * <p>People do not tap on a click but a little before it, 20 to 50 ms, most of those without
 * training more than musicians (Repp 2005, "Sensorimotor synchronization: a review of the tapping
 * literature"; Repp and Su 2013, "Sensorimotor synchronization: a review of recent research"; both
 * from memory). They hear a late click late and tap before that. So what is measured is the latency
 * less their habit, and the middle of the habit is added again. Who is at the keys is not known, so
 * what comes out is good to {@link #HABIT_SPREAD_SECONDS} at best; a loop is better, and a delay
 * that was tapped is marked as such.
 *
 * @param latencySeconds from a click's leaving the output's line to its being heard, and the tap's
 *     way back to us; 0 to 1
 * @param habitSeconds what was added for the habit
 * @param spreadSeconds standard deviation of single taps round their middle
 * @param taps how many counted
 */
public record TapCheck(double latencySeconds, double habitSeconds, double spreadSeconds, int taps) {

  /** How early people tap, in seconds: the middle of 20 to 50 ms. */
  static final double HABIT_SECONDS = 0.035;

  /** How far from that middle one person's habit may lie, in seconds. */
  static final double HABIT_SPREAD_SECONDS = 0.015;

  /** The first taps are still looking for the beat. */
  static final int SETTLING = 4;

  private static final int FEWEST = 8;

  /** Taps that lie wider than this were not on the clicks. */
  private static final double WIDEST_SPREAD = 0.060;

  /** A tap is later than its click by no more than this share of the time between two. */
  private static final double LATEST_SHARE = 0.75;

  /** Standard deviations over a median absolute deviation, of a normal distribution. */
  private static final double PER_MAD = 1.4826;

  /**
   * What taps tell.
   *
   * @param clicks when each click left the output's line, in seconds, in order, evenly
   * @param taps when each tap came in, in seconds of the same clock
   * @throws UserMistake when there are too few, or they do not go with the clicks
   */
  public static TapCheck of(List<Double> clicks, List<Double> taps) {
    double apart = (clicks.get(clicks.size() - 1) - clicks.get(0)) / (clicks.size() - 1);
    List<Double> late = new ArrayList<>();
    for (int i = SETTLING; i < clicks.size(); i++) {
      double click = clicks.get(i);
      double[] own =
          taps.stream()
              .mapToDouble(tap -> tap - click)
              .filter(off -> off >= -(1 - LATEST_SHARE) * apart && off < LATEST_SHARE * apart)
              .toArray();
      // Two taps to a click: somebody doubled the beat or stumbled; neither tells anything.
      if (own.length == 1) {
        late.add(own[0]);
      }
    }
    if (late.size() < FEWEST) {
      throw new UserMistake(
          "only "
              + late.size()
              + " taps went with the clicks, and "
              + FEWEST
              + " are needed; tap once with each click, from the first to the last");
    }
    double middle = median(late);
    double[] away = late.stream().mapToDouble(l -> Math.abs(l - middle)).toArray();
    Arrays.sort(away);
    double spread = PER_MAD * away[away.length / 2];
    List<Double> near =
        late.stream().filter(l -> Math.abs(l - middle) <= Math.max(0.01, 3 * spread)).toList();
    if (spread > WIDEST_SPREAD || near.size() < FEWEST) {
      throw new UserMistake(
          "the taps lay too far apart to tell anything; tap calmly with each click and try again");
    }
    double latency = Math.max(0, Math.min(1, median(near) + HABIT_SECONDS));
    return new TapCheck(latency, HABIT_SECONDS, spread, near.size());
  }

  private static double median(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
  }

  /** How far off the latency may be, one standard deviation, in seconds. */
  public double unsureSeconds() {
    return Math.hypot(HABIT_SPREAD_SECONDS, spreadSeconds / Math.sqrt(taps));
  }
}
