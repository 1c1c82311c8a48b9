package holdfast.backing;

import holdfast.chart.Changes;
import holdfast.chart.ChordSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;

/**
 * Which bars were played from which beat on, and which will be. One thread plans the next bar, any
 * may ask.
 */
final class WayTaken {

  private final Arrangement arrangement;
  private final NavigableMap<Double, BarPlace> bars = new ConcurrentSkipListMap<>();
  private volatile Route route;
  private volatile boolean bent;

  WayTaken(Arrangement arrangement, Route route) {
    this.arrangement = arrangement;
    this.route = route;
    bars.put(-arrangement.pickupBeats(), route.first());
  }

  void bend(Route other) {
    bent = true;
    route = other;
  }

  Route route() {
    return route;
  }

  /** The bar that was planned last. */
  Map.Entry<Double, BarPlace> last() {
    return bars.lastEntry();
  }

  /** Plans the bar after the last one; empty where that was the end. */
  Optional<BarPlace> planNext() {
    Map.Entry<Double, BarPlace> last = bars.lastEntry();
    Optional<BarPlace> next = route.after(last.getValue());
    next.ifPresent(place -> bars.put(last.getKey() + arrangement.lengthOf(last.getValue()), place));
    return next;
  }

  /** The bar at a beat, with its first beat; of bars not planned yet, as the route says now. */
  Map.Entry<Double, BarPlace> at(double beat) {
    Map.Entry<Double, BarPlace> entry = bars.floorEntry(beat);
    if (entry == null) {
      return bars.firstEntry();
    }
    double start = entry.getKey();
    BarPlace place = entry.getValue();
    while (beat >= start + arrangement.lengthOf(place)) {
      Optional<BarPlace> next = route.after(place);
      if (next.isEmpty()) {
        break;
      }
      start += arrangement.lengthOf(place);
      place = next.get();
    }
    return Map.entry(start, place);
  }

  /** The changes along the way, and one round further. */
  Changes changes() {
    if (!bent) {
      return arrangement.changes();
    }
    List<ChordSpan> spans = new ArrayList<>();
    double start = 0;
    Optional<BarPlace> here = Optional.empty();
    for (Map.Entry<Double, BarPlace> bar : bars.entrySet()) {
      start = bar.getKey();
      here = Optional.of(bar.getValue());
      add(spans, start, bar.getValue());
    }
    for (int ahead = 0; ahead < arrangement.form().bars().size() && here.isPresent(); ahead++) {
      start += arrangement.lengthOf(here.get());
      here = route.after(here.get());
      if (here.isPresent()) {
        add(spans, start, here.get());
      }
    }
    return new Changes(spans, 0, arrangement.chart().sounding().key());
  }

  private void add(List<ChordSpan> spans, double start, BarPlace place) {
    arrangement.chordsOf(place).forEach(span -> spans.add(span.later(start)));
  }
}
