package holdfast.listening.midi;

import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * When is a tick of this file? Turns ticks into seconds and quarter notes by the file's division
 * and its tempo events, which hold for all tracks.
 */
final class FileClock {

  /** The tempo of a file that names none: 120 quarter notes a minute (Standard MIDI Files 1.0). */
  static final int DEFAULT_MICROS_PER_QUARTER = 500_000;

  private final Division division;
  private final TempoMap tempo;
  private final long[] ticks;
  private final double[] seconds;
  private final double[] secondsPerTick;

  /**
   * A clock of these tempo events.
   *
   * @param changes in increasing order of tick, two at the same tick: the later one holds
   */
  FileClock(Division division, List<TempoChange> changes) {
    this.division = division;
    List<TempoChange> steps = withOpening(changes);
    int n = steps.size();
    this.ticks = new long[n];
    this.seconds = new double[n];
    this.secondsPerTick = new double[n];
    List<TempoMap.Point> points = new ArrayList<>(n);
    double quarter = 0;
    for (int i = 0; i < n; i++) {
      TempoChange step = steps.get(i);
      ticks[i] = step.tick();
      secondsPerTick[i] = secondsPerTick(step.microsPerQuarter());
      if (i > 0) {
        long passed = ticks[i] - ticks[i - 1];
        seconds[i] = seconds[i - 1] + passed * secondsPerTick[i - 1];
        quarter += quarters(passed, steps.get(i - 1).microsPerQuarter());
      }
      points.add(new TempoMap.Point(quarter, seconds[i], 60e6 / step.microsPerQuarter()));
    }
    this.tempo = new TempoMap(points);
  }

  /** From this tick on, a quarter note lasts so many microseconds (more than 0). */
  record TempoChange(long tick, int microsPerQuarter) {}

  double secondsAt(long tick) {
    int i = Arrays.binarySearch(ticks, tick);
    int step = i >= 0 ? i : -i - 2;
    return seconds[step] + (tick - ticks[step]) * secondsPerTick[step];
  }

  double quartersAt(long tick) {
    return division instanceof Division.TicksPerQuarter ppq
        ? (double) tick / ppq.ticks()
        : tempo.beatAt(secondsAt(tick));
  }

  /** Beats of this map are quarter notes. */
  TempoMap tempo() {
    return tempo;
  }

  private double secondsPerTick(int microsPerQuarter) {
    return division instanceof Division.TicksPerQuarter ppq
        ? microsPerQuarter / 1e6 / ppq.ticks()
        : 1 / ((Division.TicksPerSecond) division).ticks();
  }

  private double quarters(long passedTicks, int microsPerQuarter) {
    return division instanceof Division.TicksPerQuarter ppq
        ? (double) passedTicks / ppq.ticks()
        : passedTicks * secondsPerTick(microsPerQuarter) * 1e6 / microsPerQuarter;
  }

  /** One step for each tick, each with another tempo than the last, the first at tick 0. */
  private static List<TempoChange> withOpening(List<TempoChange> changes) {
    List<TempoChange> steps = new ArrayList<>();
    steps.add(new TempoChange(0, DEFAULT_MICROS_PER_QUARTER));
    for (TempoChange change : changes) {
      int last = steps.size() - 1;
      if (steps.get(last).tick() == change.tick()) {
        steps.set(last, change);
      } else if (steps.get(last).microsPerQuarter() != change.microsPerQuarter()) {
        steps.add(change);
      }
    }
    return steps;
  }
}
