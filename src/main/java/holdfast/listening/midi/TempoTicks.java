package holdfast.listening.midi;

import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;

/**
 * A tempo map in the whole numbers of a file: ticks, and microseconds to a quarter note. Each
 * number is rounded so that the error of the ones before it is made good, and notes are laid by the
 * rounded tempo; so nothing drifts, however long the take.
 */
final class TempoTicks {

  private static final int SLOWEST = 0xFFFFFF; // three bytes: 3.58 quarters a minute

  private final int perQuarter;
  private final List<FileClock.TempoChange> changes;
  private final FileClock clock;

  /**
   * The ticks of a map.
   *
   * @param quarters quarter notes against seconds; quarter 0 at second 0
   */
  TempoTicks(TempoMap quarters, int perQuarter) {
    this.perQuarter = perQuarter;
    this.changes = changes(quarters);
    this.clock = new FileClock(new Division.TicksPerQuarter(perQuarter), changes);
  }

  List<FileClock.TempoChange> changes() {
    return changes;
  }

  long tickOfQuarter(double quarter) {
    return Math.max(0, Math.round(quarter * perQuarter));
  }

  long tickOfSecond(double seconds) {
    return tickOfQuarter(clock.tempo().beatAt(seconds));
  }

  private List<FileClock.TempoChange> changes(TempoMap quarters) {
    List<TempoMap.Point> points = quarters.points();
    List<FileClock.TempoChange> rounded = new ArrayList<>();
    double seconds = 0;
    for (int i = 0; i < points.size(); i++) {
      TempoMap.Point point = points.get(i);
      long tick = i == 0 ? 0 : tickOfQuarter(point.beat());
      double exact = 60e6 / point.beatsPerMinute();
      long length = 0;
      if (i + 1 < points.size()) {
        TempoMap.Point next = points.get(i + 1);
        length = tickOfQuarter(next.beat()) - tick;
        if (length > 0) {
          exact = (next.seconds() - seconds) * 1e6 * perQuarter / length;
        }
      }
      int micros = (int) Math.max(1, Math.min(SLOWEST, Math.round(exact)));
      seconds += micros / 1e6 * length / perQuarter;
      rounded.add(new FileClock.TempoChange(tick, micros));
    }
    return rounded;
  }
}
