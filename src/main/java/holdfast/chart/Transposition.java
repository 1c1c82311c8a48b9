package holdfast.chart;

import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.util.List;
import java.util.Optional;

/**
 * Moves charts to other keys and writes them for transposing instruments, with the spelling that
 * musicians expect: the new key takes the smaller signature, and chords move by letters with it.
 */
public final class Transposition {

  private Transposition() {}

  /**
   * The same chart on another tonic, in the same mode. What sounds moves with what is written.
   *
   * @throws IllegalArgumentException where the chart has no key to move from
   */
  public static Chart to(Chart chart, NoteName tonic) {
    Key from =
        chart
            .key()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "“"
                            + chart.title()
                            + "” names no key to move from; move it by an interval instead"));
    return moved(
        chart,
        Interval.up(from.tonic(), tonic),
        Optional.of(new Key(tonic, from.mode())),
        chart.heading().writtenFor());
  }

  /** The same chart an interval higher. What sounds moves with what is written. */
  public static Chart by(Chart chart, Interval interval) {
    return by(chart, interval, chart.heading().writtenFor());
  }

  /** What sounds stays; what is written is what a player of that instrument must read. */
  public static Chart writtenFor(Chart chart, WrittenFor instrument) {
    WrittenFor before = chart.heading().writtenFor();
    if (before.equals(instrument)) {
      return chart;
    }
    Interval way =
        before.fromSoundingToWritten().reversed().plus(instrument.fromSoundingToWritten());
    return by(chart, way, instrument);
  }

  private static Chart by(Chart chart, Interval interval, WrittenFor instrument) {
    Optional<Key> key = chart.key().map(from -> from.transpose(interval));
    // The key may have taken its other name; then the chords take the same way by letters.
    Interval way =
        key.isPresent()
            ? Interval.up(chart.key().orElseThrow().tonic(), key.get().tonic())
            : interval;
    return moved(chart, way, key, instrument);
  }

  private static Chart moved(
      Chart chart, Interval interval, Optional<Key> key, WrittenFor instrument) {
    return new Chart(
        chart.heading().in(key, instrument), chart.changed(bar -> moved(bar, interval)));
  }

  private static WrittenBar moved(WrittenBar bar, Interval interval) {
    if (!(bar.contents() instanceof BarContents.Chords chords)) {
      return bar;
    }
    List<TimedChord> there =
        chords.chords().stream()
            .map(chord -> new TimedChord(moved(chord.harmony(), interval), chord.beats()))
            .toList();
    return bar.holding(new BarContents.Chords(there));
  }

  private static Optional<Harmony> moved(Optional<Harmony> harmony, Interval interval) {
    return harmony.map(h -> h.transpose(interval));
  }
}
