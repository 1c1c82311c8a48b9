package holdfast.time;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Where beats fall in seconds: the one place where what is written (beats) and what is played
 * (seconds) are turned into each other. Between two points the tempo is steady; after the last it
 * goes on.
 *
 * @param points in increasing order of both beat and second; at least one
 */
public record TempoMap(List<Point> points) {

  /**
   * From here on, this tempo.
   *
   * @param beat where, in beats
   * @param seconds when, in seconds
   * @param beatsPerMinute the tempo from here, more than 0
   */
  public record Point(double beat, double seconds, double beatsPerMinute) {

    /** Checks that the tempo goes forward. */
    public Point {
      if (!Double.isFinite(beat) || !Double.isFinite(seconds)) {
        throw new IllegalArgumentException(
            "a tempo begins at a beat and a second, not at beat " + beat + ", second " + seconds);
      }
      if (!(beatsPerMinute > 0) || !Double.isFinite(beatsPerMinute)) {
        throw new IllegalArgumentException(
            "a tempo must be more than 0 beats a minute, not " + beatsPerMinute);
      }
    }
  }

  /** Checks order, and copies. */
  public TempoMap {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a tempo map needs at least one point");
    }
    for (int i = 1; i < points.size(); i++) {
      Point before = points.get(i - 1);
      Point point = points.get(i);
      if (point.beat() < before.beat() || point.seconds() < before.seconds()) {
        throw new IllegalArgumentException("a tempo map must go forward, at beat " + point.beat());
      }
    }
  }

  /** One tempo throughout, beat 0 at second 0. */
  public static TempoMap steady(double beatsPerMinute) {
    return steady(beatsPerMinute, 0);
  }

  /** One tempo throughout, beat 0 at the given second. */
  public static TempoMap steady(double beatsPerMinute, double secondsOfBeatZero) {
    return new TempoMap(List.of(new Point(0, secondsOfBeatZero, beatsPerMinute)));
  }

  /** The beat at this second; before the first point its tempo reaches back. */
  public double beatAt(double seconds) {
    Point p = lastNotAfter(seconds, Point::seconds);
    return p.beat() + (seconds - p.seconds()) * p.beatsPerMinute() / 60;
  }

  /** The second of this beat; before the first point its tempo reaches back. */
  public double secondsAt(double beat) {
    Point p = lastNotAfter(beat, Point::beat);
    return p.seconds() + (beat - p.beat()) * 60 / p.beatsPerMinute();
  }

  /** The tempo at the first point, in beats a minute. */
  public double openingTempo() {
    return points.get(0).beatsPerMinute();
  }

  /** By halving, since a tempo that follows a player has thousands of points. */
  private Point lastNotAfter(double place, ToDoubleFunction<Point> measure) {
    int low = 0;
    int high = points.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (measure.applyAsDouble(points.get(middle)) > place) {
        high = middle - 1;
      } else {
        low = middle;
      }
    }
    return points.get(low);
  }
}
