package holdfast.listening.alignment;

import java.util.ArrayList;
import java.util.List;

/**
 * The line through those points that agree (Fischler and Bolles 1981, "Random sample consensus";
 * here every pair is tried, since points are few).
 *
 * @param line the line
 * @param agreeing how many points lie on it
 * @param all how many there are
 * @param spreadSeconds root mean square distance of the agreeing points
 */
record LineFit(TimeLine line, int agreeing, int all, double spreadSeconds) {

  /** Clocks and tempi that differ by more than this from what is expected were not found. */
  private static final double FARTHEST_STRETCH = 0.02;

  /**
   * One stretch of the take that was found in the backing.
   *
   * @param backing its second of the backing
   * @param take its second of the take
   * @param weight how clearly, more than 0
   */
  record Point(double backing, double take, double weight) {}

  /** The share of points that agree. */
  double share() {
    return all == 0 ? 0 : (double) agreeing / all;
  }

  /**
   * The line that most points agree on.
   *
   * @param expected the line that was expected, kept where there are too few points
   * @param tolerance how far from the line a point may lie, in seconds
   */
  static LineFit of(List<Point> points, TimeLine expected, double tolerance) {
    TimeLine best = expected;
    double most = weightOn(points, expected, tolerance);
    for (int i = 0; i < points.size(); i++) {
      for (int j = i + 1; j < points.size(); j++) {
        double apart = points.get(j).backing - points.get(i).backing;
        if (apart < 5) {
          continue;
        }
        double stretch = (points.get(j).take - points.get(i).take) / apart;
        if (Math.abs(stretch - expected.stretch()) > FARTHEST_STRETCH) {
          continue;
        }
        TimeLine line = new TimeLine(points.get(i).take - stretch * points.get(i).backing, stretch);
        double weight = weightOn(points, line, tolerance);
        if (weight > most + 1e-9) {
          most = weight;
          best = line;
        }
      }
    }
    for (int round = 0; round < 3; round++) {
      best = leastSquares(on(points, best, tolerance), best);
    }
    List<Point> on = on(points, best, tolerance);
    double sum = 0;
    for (Point point : on) {
      sum += Math.pow(point.take - best.take(point.backing), 2);
    }
    return new LineFit(best, on.size(), points.size(), Math.sqrt(sum / Math.max(1, on.size())));
  }

  private static double weightOn(List<Point> points, TimeLine line, double tolerance) {
    double weight = 0;
    for (Point point : points) {
      double off = Math.abs(point.take - line.take(point.backing)) / tolerance;
      // Nearer is better: of two lines through the same points the straighter wins.
      weight += off <= 1 ? point.weight * (1 - 0.5 * off * off) : 0;
    }
    return weight;
  }

  private static List<Point> on(List<Point> points, TimeLine line, double tolerance) {
    List<Point> on = new ArrayList<>();
    for (Point point : points) {
      if (Math.abs(point.take - line.take(point.backing)) <= tolerance) {
        on.add(point);
      }
    }
    return on;
  }

  private static TimeLine leastSquares(List<Point> points, TimeLine otherwise) {
    double weight = 0;
    double x = 0;
    double y = 0;
    for (Point point : points) {
      weight += point.weight;
      x += point.weight * point.backing;
      y += point.weight * point.take;
    }
    if (points.size() < 2) {
      return otherwise;
    }
    x /= weight;
    y /= weight;
    double xx = 0;
    double xy = 0;
    for (Point point : points) {
      xx += point.weight * (point.backing - x) * (point.backing - x);
      xy += point.weight * (point.backing - x) * (point.take - y);
    }
    if (xx < 1) {
      return new TimeLine(y - otherwise.stretch() * x, otherwise.stretch());
    }
    double stretch = xy / xx;
    return new TimeLine(y - stretch * x, stretch);
  }
}
