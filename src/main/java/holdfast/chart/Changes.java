package holdfast.chart;

import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;

/**
 * The chords of a tune in time, chorus after chorus, with the palette of notes that each one
 * offers. Immutable; the palettes are worked out once, here, so that asking is cheap.
 */
public final class Changes {

  private final List<ChordSpan> spans;
  private final double formBeats;
  private final Optional<Key> key;
  private final double[] starts;
  private final int firstOfForm;
  private final List<ChordPalette> palettes;

  /**
   * Changes from spans in order.
   *
   * @param spans at least one, in increasing order of start, none overlapping the next; those
   *     before beat 0 are a pick-up and sound only once. Over a gap the chord before it goes on.
   * @param formBeats how long one chorus is, in beats, after which the spans from beat 0 on come
   *     again; 0 where nothing comes again and the last chord goes on
   * @param key the key of the tune, where it is known
   */
  public Changes(List<ChordSpan> spans, double formBeats, Optional<Key> key) {
    this.spans = List.copyOf(spans);
    this.formBeats = formBeats;
    this.key = key;
    check();
    this.starts = this.spans.stream().mapToDouble(ChordSpan::startBeat).toArray();
    this.firstOfForm = firstOfForm();
    this.palettes = palettesOf();
  }

  /** Changes that do not come again, from the chord that starts at each beat; the last goes on. */
  public static Changes through(SortedMap<Double, Harmony> startingAt, Optional<Key> key) {
    List<ChordSpan> spans = new ArrayList<>();
    List<Double> beats = List.copyOf(startingAt.keySet());
    for (int i = 0; i < beats.size(); i++) {
      double start = beats.get(i);
      double end = i + 1 < beats.size() ? beats.get(i + 1) : Double.POSITIVE_INFINITY;
      spans.add(new ChordSpan(start, end - start, startingAt.get(start), 1));
    }
    return new Changes(spans, 0, key);
  }

  /** One chord for good, as a vamp or a drone. */
  public static Changes vamp(Harmony harmony, Optional<Key> key) {
    return new Changes(List.of(new ChordSpan(0, Double.POSITIVE_INFINITY, harmony, 1)), 0, key);
  }

  /** The chords of one chorus, with the pick-up before it. */
  public List<ChordSpan> spans() {
    return spans;
  }

  /** How long one chorus is, in beats; 0 where nothing comes again. */
  public double formBeats() {
    return formBeats;
  }

  /** The key of the tune, where it is known. */
  public Optional<Key> key() {
    return key;
  }

  /**
   * The chord at a beat of any chorus, told in the beats of that chorus. Before the first chord,
   * where a melody's pick-up may be, the first chord of the form stands.
   */
  public ChordSpan at(double beat) {
    return spans.get(indexAt(beat)).later(choruses(beat) * formBeats);
  }

  /** The palette of the chord at a beat of any chorus: it knows the key and the chord to come. */
  public ChordPalette paletteAt(double beat) {
    return palettes.get(indexAt(beat));
  }

  /** The next beat after this one where the harmony really changes; empty where it never does. */
  public Optional<Double> nextChange(double beat) {
    ChordSpan from = at(beat);
    ChordSpan span = from;
    for (int i = 0; i < spans.size() && Double.isFinite(span.endBeat()); i++) {
      ChordSpan next = at(span.endBeat());
      if (next.startBeat() <= span.startBeat()) {
        break;
      }
      if (!next.harmony().equals(from.harmony())) {
        return Optional.of(next.startBeat());
      }
      span = next;
    }
    return Optional.empty();
  }

  /**
   * The chords that sound anywhere from one beat up to, but not at, another; whole spans, in the
   * beats of their chorus, so the first may start earlier and the last end later. Where both beats
   * are the same: the chord at that beat.
   */
  public List<ChordSpan> between(double fromBeat, double toBeat) {
    if (!Double.isFinite(fromBeat) || !Double.isFinite(toBeat) || toBeat < fromBeat) {
      throw new IllegalArgumentException(
          "chords are looked up forwards in time, not from " + fromBeat + " to " + toBeat);
    }
    List<ChordSpan> found = new ArrayList<>();
    int index = indexAt(fromBeat);
    double chorusStart = choruses(fromBeat) * formBeats;
    found.add(spans.get(index).later(chorusStart));
    while (true) {
      index++;
      if (index == spans.size()) {
        if (formBeats == 0) {
          return found;
        }
        index = firstOfForm;
        chorusStart += formBeats;
      }
      ChordSpan next = spans.get(index).later(chorusStart);
      if (next.startBeat() >= toBeat) {
        return found;
      }
      found.add(next);
    }
  }

  private int indexAt(double beat) {
    if (!Double.isFinite(beat)) {
      throw new IllegalArgumentException("a chord is looked up at a finite beat, not " + beat);
    }
    double place = beat - choruses(beat) * formBeats;
    // The last span of the form may be the one before beat 0 only where there is a pick-up.
    int low = place >= 0 ? firstOfForm : 0;
    int high = spans.size() - 1;
    if (place < starts[low]) {
      return place < 0 && firstOfForm > 0 ? 0 : firstOfForm;
    }
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (starts[middle] <= place) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  private double choruses(double beat) {
    return formBeats > 0 && beat >= 0 ? Math.floor(beat / formBeats) : 0;
  }

  private void check() {
    if (spans.isEmpty()) {
      throw new IllegalArgumentException("changes need at least one chord");
    }
    if (!(formBeats >= 0) || !Double.isFinite(formBeats)) {
      throw new IllegalArgumentException("a chorus lasts 0 or more beats, not " + formBeats);
    }
    for (int i = 1; i < spans.size(); i++) {
      // A thousandth of a beat is far below what anyone hears, and far above rounding.
      if (spans.get(i).startBeat() < spans.get(i - 1).endBeat() - 0.001) {
        throw new IllegalArgumentException(
            "two chords sound at once at beat " + spans.get(i).startBeat());
      }
    }
    if (formBeats > 0 && spans.get(spans.size() - 1).startBeat() >= formBeats) {
      throw new IllegalArgumentException("a chord starts after the form's end at " + formBeats);
    }
  }

  private int firstOfForm() {
    for (int i = 0; i < starts.length; i++) {
      if (starts[i] >= 0) {
        return i;
      }
    }
    if (formBeats > 0) {
      throw new IllegalArgumentException("a form that comes again needs a chord in bar 1");
    }
    return 0;
  }

  private List<ChordPalette> palettesOf() {
    record Situation(Harmony harmony, Optional<Harmony> next) {}
    Map<Situation, ChordPalette> known = new HashMap<>();
    List<ChordPalette> all = new ArrayList<>();
    for (int i = 0; i < spans.size(); i++) {
      Situation here = new Situation(spans.get(i).harmony(), nextOtherChord(i));
      all.add(known.computeIfAbsent(here, s -> ChordPalette.of(s.harmony(), key, s.next())));
    }
    return List.copyOf(all);
  }

  /** The chord that this one moves to; a chord that is only struck again is no move. */
  private Optional<Harmony> nextOtherChord(int index) {
    Harmony here = spans.get(index).harmony();
    int i = index;
    for (int steps = 0; steps < spans.size(); steps++) {
      i++;
      if (i == spans.size()) {
        if (formBeats == 0) {
          return Optional.empty();
        }
        i = firstOfForm;
      }
      if (!spans.get(i).harmony().equals(here)) {
        return Optional.of(spans.get(i).harmony());
      }
    }
    return Optional.empty();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Changes that
        && spans.equals(that.spans)
        && formBeats == that.formBeats
        && key.equals(that.key);
  }

  @Override
  public int hashCode() {
    return 31 * spans.hashCode() + Double.hashCode(formBeats);
  }

  @Override
  public String toString() {
    return "Changes" + spans + " every " + formBeats + " beats";
  }
}
