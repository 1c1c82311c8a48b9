package holdfast.backing;

import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * An arrangement, and how much of it is played.
 *
 * @param arrangement what is played
 * @param rounds how many choruses; empty for without end
 * @param countInBars how many bars are counted in, 0 to 4
 * @param muted the parts that stay silent
 */
public record Performance(
    Arrangement arrangement, OptionalInt rounds, int countInBars, Set<Part> muted) {

  /** Checks the count-in, and copies. */
  public Performance {
    if (countInBars < 0 || countInBars > 4) {
      throw new IllegalArgumentException("count in 0 to 4 bars, not " + countInBars);
    }
    if (rounds.isPresent() && rounds.getAsInt() < 1) {
      throw new IllegalArgumentException("play 1 chorus or more, not " + rounds.getAsInt());
    }
    muted = muted.isEmpty() ? Set.of() : Set.copyOf(EnumSet.copyOf(muted));
  }

  /** Without end, with the usual count-in, nothing muted. */
  public static Performance endless(Arrangement arrangement) {
    return new Performance(arrangement, OptionalInt.empty(), arrangement.usualCountIn(), Set.of());
  }

  /** So many choruses, with the usual count-in, nothing muted. */
  public static Performance of(Arrangement arrangement, int rounds) {
    return new Performance(
        arrangement, OptionalInt.of(rounds), arrangement.usualCountIn(), Set.of());
  }

  /** The way through the form. */
  public Route route() {
    return arrangement.route(rounds);
  }

  /** The count-in, on negative beats. */
  public List<BackingEvent> countIn() {
    return arrangement.countIn(countInBars);
  }

  /** The first beat of all: of the count-in, of a pick-up, or 0. */
  public double firstBeat() {
    double counted = countIn().stream().mapToDouble(BackingEvent::onsetBeats).min().orElse(0);
    return Math.min(counted, -arrangement.pickupBeats());
  }

  /** The beat at which all is over; empty where it has no end. */
  public Optional<Double> lastBeat() {
    double round = (double) arrangement.bars().size() * arrangement.metre().beats();
    return rounds.isPresent() ? Optional.of(rounds.getAsInt() * round) : Optional.empty();
  }

  /** When beats fall where the tempo stays: beat 0 at second 0. */
  public TempoMap tempoMap() {
    return TempoMap.steady(arrangement.tempo());
  }

  /**
   * How long it lasts, from the first count to the last beat.
   *
   * @throws IllegalStateException where it has no end
   */
  public double seconds() {
    double last = lastBeat().orElseThrow(() -> new IllegalStateException("it has no end"));
    return tempoMap().secondsAt(last) - tempoMap().secondsAt(firstBeat());
  }

  /**
   * All that is heard, muted parts left out, count-in first; in order of onset.
   *
   * @throws IllegalStateException where the performance has no end
   */
  public List<BackingEvent> events() {
    if (rounds.isEmpty()) {
      throw new IllegalStateException("a backing without end cannot be listed to its end");
    }
    List<BackingEvent> events = new ArrayList<>(countIn());
    Route route = route();
    double start = -arrangement.pickupBeats();
    for (Optional<BarPlace> here = Optional.of(route.first()); here.isPresent(); ) {
      BarPlace place = here.get();
      Optional<BarPlace> next = route.after(place);
      for (BackingEvent event : arrangement.bar(place, next)) {
        events.add(event.later(start));
      }
      start += arrangement.lengthOf(place);
      here = next;
    }
    events.removeIf(event -> muted.contains(event.part()));
    events.sort(java.util.Comparator.comparingDouble(BackingEvent::onsetBeats));
    return List.copyOf(events);
  }
}
