package holdfast.chart;

import holdfast.theory.Harmony;
import holdfast.theory.NoChord;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes bars of measures: places in quarter notes become chords with their beats. */
final class MusicXmlBars {

  private final String source;
  private final List<MusicXmlMeasure> measures;
  private final Metre metre;
  private final List<WrittenBar> bars = new ArrayList<>();

  /** The measure that each bar starts with; a two-bar repeat takes two. */
  private final List<MusicXmlMeasure> firstMeasures = new ArrayList<>();

  MusicXmlBars(String source, List<MusicXmlMeasure> measures, Metre metre) {
    this.source = source;
    this.measures = measures;
    this.metre = metre;
    int i = 0;
    while (i < measures.size()) {
      i += add(i);
    }
  }

  /** How long the first measure is, in beats, where it is a pick-up; else 0. */
  double pickupBeats() {
    MusicXmlMeasure first = measures.get(0);
    double beats = Math.rint(first.quarters() / metre.quartersPerBeat() * 1e9) / 1e9;
    boolean isUncounted = first.implicit() || first.number().equals("0");
    return isUncounted && beats > 0 && beats < metre.beats() ? beats : 0;
  }

  List<WrittenBar> written() {
    return startingRepeatsAfresh(bars);
  }

  String numberOf(int bar) {
    return firstMeasures.get(Math.min(bar, firstMeasures.size() - 1)).number();
  }

  Optional<String> sectionAt(int bar) {
    return firstMeasures.get(bar).section();
  }

  boolean startsRow(int bar) {
    return firstMeasures.get(bar).startsRow();
  }

  boolean hasRows() {
    return measures.stream().skip(1).anyMatch(MusicXmlMeasure::startsRow);
  }

  /** Makes the bar that starts with a measure, and tells how many measures it took. */
  private int add(int i) {
    MusicXmlMeasure measure = measures.get(i);
    boolean isPair =
        measure.repeats() == 2 && i + 1 < measures.size() && measures.get(i + 1).repeats() == 2;
    firstMeasures.add(measure);
    if (isPair) {
      MusicXmlMeasure second = measures.get(i + 1);
      RepeatSigns signs =
          new RepeatSigns(
              measure.signs().opens(),
              measure.signs().ending(),
              second.signs().plays(),
              second.signs().doubleLine());
      bars.add(new WrittenBar(new BarContents.TwoBarRepeat(), measure.unexpected(), signs));
      return 2;
    }
    BarContents contents =
        measure.repeats() == 1 ? new BarContents.OneBarRepeat() : chords(measure, i == 0);
    bars.add(new WrittenBar(contents, measure.unexpected(), measure.signs()));
    return 1;
  }

  private BarContents.Chords chords(MusicXmlMeasure measure, boolean isFirst) {
    double barBeats = isFirst && pickupBeats() > 0 ? pickupBeats() : metre.beats();
    if (!isFirst && measure.implicit()) {
      double beats = measure.quarters() / metre.quartersPerBeat();
      if (Math.abs(beats - barBeats) > PlayedOut.BEAT_TOLERANCE) {
        throw new ChartException(
            source,
            "bar " + measure.number() + ": it has " + Decimal.text(beats) + " beats",
            "write full bars of " + metre.text() + ", with repeats at bar lines");
      }
    }
    List<Double> starts = new ArrayList<>();
    List<Optional<Harmony>> harmonies = new ArrayList<>();
    for (MusicXmlMeasure.Placed chord : measure.chords()) {
      double start = Math.rint(chord.quarters() / metre.quartersPerBeat() * 1e9) / 1e9;
      if (start > barBeats - PlayedOut.BEAT_TOLERANCE) {
        throw new ChartException(
            source,
            "bar " + measure.number() + ": " + chord.harmony().text() + " stands after its end",
            "move the chord into the bar in your notation program");
      }
      starts.add(start);
      harmonies.add(Optional.of(chord.harmony()));
    }
    if (starts.isEmpty() || starts.get(0) > PlayedOut.BEAT_TOLERANCE) {
      starts.add(0, 0.0);
      // Before the first chord of all there is none; later the one before goes on.
      boolean any = bars.stream().anyMatch(MusicXmlBars::namesChord);
      harmonies.add(0, any ? Optional.empty() : Optional.of(NoChord.SILENT));
    }
    List<TimedChord> chords = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      double end = i + 1 < starts.size() ? starts.get(i + 1) : barBeats;
      chords.add(new TimedChord(harmonies.get(i), end - starts.get(i)));
    }
    return new BarContents.Chords(chords);
  }

  private static boolean namesChord(WrittenBar bar) {
    return bar.contents() instanceof BarContents.Chords chords
        && chords.chords().stream().anyMatch(chord -> chord.harmony().isPresent());
  }

  /**
   * Where a repeat starts, the chord that goes on is named, because each pass comes from another.
   */
  private List<WrittenBar> startingRepeatsAfresh(List<WrittenBar> written) {
    PlayingOrder order;
    try {
      order = PlayingOrder.of(written, pickupBeats() > 0 ? 1 : 0);
    } catch (UnplayableBarException e) {
      // The chart's own check says so, with the bar's number.
      return written;
    }
    List<WrittenBar> afresh = new ArrayList<>();
    Optional<Harmony> before = Optional.empty();
    for (int i = 0; i < written.size(); i++) {
      WrittenBar bar = written.get(i);
      if (bar.contents() instanceof BarContents.Chords chords) {
        List<TimedChord> named = new ArrayList<>(chords.chords());
        if (order.isRepeatStart(i) && named.get(0).harmony().isEmpty()) {
          named.set(0, new TimedChord(before, named.get(0).beats()));
        }
        Optional<Harmony> ending = named.get(named.size() - 1).harmony();
        before = ending.isPresent() ? ending : before;
        bar = bar.holding(new BarContents.Chords(named));
      }
      afresh.add(bar);
    }
    return afresh;
  }
}
