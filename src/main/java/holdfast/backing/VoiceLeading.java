package holdfast.backing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which voicing of each chord makes the smoothest way through the whole form and back to its
 * beginning? Exact, by dynamic programming: for each voicing of the first chord the best way round,
 * and of those the best.
 */
final class VoiceLeading {

  private VoiceLeading() {}

  /**
   * One voicing for each chord, with the least cost of movement and shape over the form, the step
   * from its last chord to its first included.
   *
   * @param choices for each chord in turn the voicings to choose from, at least one
   */
  static List<Voicing> smoothest(List<List<ShapedVoicing>> choices) {
    if (choices.isEmpty()) {
      return List.of();
    }
    List<double[][]> steps = steps(choices);
    double least = Double.POSITIVE_INFINITY;
    List<Voicing> smoothest = List.of();
    for (int first = 0; first < choices.get(0).size(); first++) {
      Round round = new Round(choices, first, steps);
      if (round.cost() < least) {
        least = round.cost();
        smoothest = round.voicings();
      }
    }
    return smoothest;
  }

  /** The voicing that lies nearest to the one that follows it: for a pick-up. */
  static Voicing leadingTo(List<ShapedVoicing> choices, Voicing next) {
    ShapedVoicing best = choices.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (ShapedVoicing choice : choices) {
      double cost = choice.cost() + VoiceMotion.between(choice.voicing(), next).cost();
      if (cost < least) {
        least = cost;
        best = choice;
      }
    }
    return best.voicing();
  }

  /**
   * What each step costs, from every voicing of a chord to every one of the next, the last step
   * back to the first chord. The same two chords meet many times in a form; they are weighed once.
   */
  private static List<double[][]> steps(List<List<ShapedVoicing>> choices) {
    record Step(List<ShapedVoicing> from, List<ShapedVoicing> to) {}
    Map<Step, double[][]> known = new HashMap<>();
    List<double[][]> steps = new ArrayList<>();
    for (int chord = 0; chord < choices.size(); chord++) {
      Step step = new Step(choices.get(chord), choices.get((chord + 1) % choices.size()));
      steps.add(known.computeIfAbsent(step, s -> table(s.from(), s.to())));
    }
    return steps;
  }

  private static double[][] table(List<ShapedVoicing> from, List<ShapedVoicing> to) {
    double[][] table = new double[from.size()][to.size()];
    for (int i = 0; i < table.length; i++) {
      for (int j = 0; j < table[i].length; j++) {
        VoiceMotion motion = VoiceMotion.between(from.get(i).voicing(), to.get(j).voicing());
        table[i][j] = to.get(j).cost() + motion.cost();
      }
    }
    return table;
  }

  /** The best way round that begins and ends on one given voicing of the first chord. */
  private static final class Round {
    private final List<List<ShapedVoicing>> choices;
    private final int[][] cameFrom;
    private final int first;
    private double cost;

    Round(List<List<ShapedVoicing>> choices, int first, List<double[][]> steps) {
      this.choices = choices;
      this.first = first;
      this.cameFrom = new int[choices.size() + 1][];
      double[] reached = new double[choices.get(0).size()];
      Arrays.fill(reached, Double.POSITIVE_INFINITY);
      reached[first] = 0;
      for (int chord = 1; chord <= choices.size(); chord++) {
        reached = step(reached, steps.get(chord - 1), chord);
      }
      cost = reached[first];
    }

    private double[] step(double[] reached, double[][] table, int chord) {
      int size = table[0].length;
      double[] next = new double[size];
      Arrays.fill(next, Double.POSITIVE_INFINITY);
      cameFrom[chord] = new int[size];
      for (int i = 0; i < reached.length; i++) {
        if (reached[i] == Double.POSITIVE_INFINITY) {
          continue;
        }
        for (int j = 0; j < size; j++) {
          double sum = reached[i] + table[i][j];
          if (sum < next[j]) {
            next[j] = sum;
            cameFrom[chord][j] = i;
          }
        }
      }
      return next;
    }

    double cost() {
      return cost;
    }

    List<Voicing> voicings() {
      List<Voicing> backwards = new ArrayList<>();
      int at = first;
      for (int chord = choices.size(); chord >= 1; chord--) {
        at = cameFrom[chord][at];
        backwards.add(choices.get(chord - 1).get(at).voicing());
      }
      java.util.Collections.reverse(backwards);
      return List.copyOf(backwards);
    }
  }
}
