package holdfast.chart;

import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * One chorus as it is played: repeats and endings played out, in concert pitch.
 *
 * @param metre the metre throughout
 * @param pickup the bar before bar 1, where there is one; it is played once, before the first
 *     chorus
 * @param bars bar 1 and on, at least one, each as long as the metre says
 */
public record Form(Metre metre, Optional<Bar> pickup, List<Bar> bars) {

  /** Copies the bars. */
  public Form {
    bars = List.copyOf(bars);
    if (bars.isEmpty()) {
      throw new IllegalArgumentException("a form has at least one bar");
    }
  }

  /** How long one chorus is, in beats, without the pick-up. */
  public double lengthBeats() {
    return (double) metre.beats() * bars.size();
  }

  /** How long the pick-up before bar 1 is, in beats; 0 where there is none. */
  public double pickupBeats() {
    return pickup.map(bar -> -bar.startBeat()).orElse(0.0);
  }

  /** All chords of one chorus in time, one span for each that is written, pick-up first. */
  public List<ChordSpan> changes() {
    List<ChordSpan> spans = new ArrayList<>();
    pickup.ifPresent(bar -> spans.addAll(bar.chords()));
    bars.forEach(bar -> spans.addAll(bar.chords()));
    return List.copyOf(spans);
  }

  /** The numbers of the bars, counted in the form, that are marked as unexpected. */
  public Set<Integer> unexpectedBars() {
    Set<Integer> numbers = new TreeSet<>();
    for (Bar bar : bars) {
      if (bar.unexpected()) {
        numbers.add(bar.number());
      }
    }
    return numbers;
  }

  /** The bar at a beat of any chorus; before beat 0 the pick-up bar, or else bar 1. */
  public Bar barAt(double beat) {
    if (beat < 0) {
      return pickup.orElse(bars.get(0));
    }
    long barsSince = (long) Math.floor(beat / metre.beats());
    return bars.get((int) (barsSince % bars.size()));
  }

  /** The first beat of a bar of the first chorus; bar 0 is the pick-up. */
  public double beatOfBar(int number) {
    if (number == 0 && pickup.isPresent()) {
      return pickup.get().startBeat();
    }
    if (number < 1 || number > bars.size()) {
      throw new IllegalArgumentException(
          "the form has bars 1 to " + bars.size() + ", and no bar " + number);
    }
    return (double) (number - 1) * metre.beats();
  }

  /** The chorus that a beat falls in, counted from 1; a pick-up belongs to the first. */
  public int chorusAt(double beat) {
    return beat < 0 ? 1 : 1 + (int) Math.floor(beat / lengthBeats());
  }
}
