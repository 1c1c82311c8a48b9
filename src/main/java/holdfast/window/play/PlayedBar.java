package holdfast.window.play;

import holdfast.backing.BarPlace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * A bar on the way through the form.
 *
 * @param startBeat its first beat, counted through the take
 * @param place which bar of the form it is
 */
record PlayedBar(double startBeat, BarPlace place) {

  /** A line of music holds as many bars as an eye takes in. */
  static final int BARS_IN_A_LINE = 4;

  /**
   * The bars of the line that starts at this beat: at most four, and a new line where the way does
   * not go on to the next bar of the form.
   *
   * @param way the bar at a beat; empty where the take is over by then
   */
  static List<PlayedBar> line(
      double startBeat, double barBeats, DoubleFunction<Optional<PlayedBar>> way) {
    List<PlayedBar> line = new ArrayList<>();
    double beat = startBeat;
    while (line.size() < BARS_IN_A_LINE) {
      Optional<PlayedBar> bar = way.apply(beat);
      boolean follows =
          bar.isPresent()
              && (line.isEmpty()
                  || bar.get().place().bar() == line.get(line.size() - 1).place().bar() + 1);
      if (!follows) {
        break;
      }
      line.add(bar.get());
      beat += barBeats;
    }
    return List.copyOf(line);
  }
}
