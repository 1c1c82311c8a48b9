package holdfast.backing;

import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * An arrangement, how much of it is played, and the line that somebody plays over it, if any.
 *
 * @param arrangement what is played
 * @param rounds how many choruses; empty for without end
 * @param countInBars how many bars are counted in, 0 to 4
 * @param muted the parts that stay silent
 * @param line in order of onset, what {@link Part#LINE} plays, in beats from beat 0, a pick-up
 *     before it; it may be longer than a chorus. A note ends where the same note is struck again;
 *     what would begin after the last beat is not played.
 */
public record Performance(
    Arrangement arrangement,
    OptionalInt rounds,
    int countInBars,
    Set<Part> muted,
    List<BackingEvent> line) {

  /** How hard a line is played whose notes say nothing about it: mezzo-forte. */
  private static final int TOUCH = 80;

  /** Checks the count-in and the line, and copies. */
  public Performance {
    if (countInBars < 0 || countInBars > 4) {
      throw new IllegalArgumentException("count in 0 to 4 bars, not " + countInBars);
    }
    if (rounds.isPresent() && rounds.getAsInt() < 1) {
      throw new IllegalArgumentException("play 1 chorus or more, not " + rounds.getAsInt());
    }
    muted = muted.isEmpty() ? Set.of() : Set.copyOf(EnumSet.copyOf(muted));
    for (BackingEvent event : line) {
      if (event.part() != Part.LINE) {
        throw new IllegalArgumentException("the line is played by LINE, not by " + event.part());
      }
    }
    line = struckOnceAtATime(line);
  }

  /** A backing without a line. */
  public Performance(
      Arrangement arrangement, OptionalInt rounds, int countInBars, Set<Part> muted) {
    this(arrangement, rounds, countInBars, muted, List.of());
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

  /** The same with this line over it, each note as it is written. */
  public Performance withLine(List<Note> notes) {
    return withPlayedLine(notes.stream().map(note -> BackingEvent.ofLine(note, TOUCH)).toList());
  }

  /** The same with this line over it, each note as early, as long and as hard as it was played. */
  public Performance withPlayedLine(List<BackingEvent> played) {
    return new Performance(arrangement, rounds, countInBars, muted, played);
  }

  /** A key that is struck again was let go before, or the first note's end would end the second. */
  private static List<BackingEvent> struckOnceAtATime(List<BackingEvent> line) {
    List<BackingEvent> sorted =
        line.stream().sorted(Comparator.comparingDouble(BackingEvent::onsetBeats)).toList();
    Map<Integer, Double> nextOnset = new HashMap<>();
    List<BackingEvent> backwards = new ArrayList<>();
    for (int i = sorted.size() - 1; i >= 0; i--) {
      BackingEvent note = sorted.get(i);
      double again = nextOnset.getOrDefault(note.pitch(), Double.POSITIVE_INFINITY);
      if (again > note.onsetBeats()) {
        backwards.add(again < note.endBeats() ? note.until(again) : note);
        nextOnset.put(note.pitch(), note.onsetBeats());
      }
    }
    Collections.reverse(backwards);
    return List.copyOf(backwards);
  }

  /** The way through the form. */
  public Route route() {
    return arrangement.route(rounds);
  }

  /** The count-in, on negative beats. */
  public List<BackingEvent> countIn() {
    return arrangement.countIn(countInBars);
  }

  /** The first beat of all: of the count-in, of a pick-up of form or line, or 0. */
  public double firstBeat() {
    double counted = countIn().stream().mapToDouble(BackingEvent::onsetBeats).min().orElse(0);
    double lineStarts = line.stream().mapToDouble(BackingEvent::onsetBeats).min().orElse(0);
    return Math.min(Math.min(counted, lineStarts), -arrangement.pickupBeats());
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
    double end = start;
    line.stream().filter(event -> event.onsetBeats() < end).forEach(events::add);
    events.removeIf(event -> muted.contains(event.part()));
    events.sort(Comparator.comparingDouble(BackingEvent::onsetBeats));
    return List.copyOf(events);
  }
}
