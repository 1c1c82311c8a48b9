package holdfast.practice;

import holdfast.chart.Bar;
import holdfast.chart.BarContents;
import holdfast.chart.Chart;
import holdfast.chart.ChartLine;
import holdfast.chart.Form;
import holdfast.chart.Heading;
import holdfast.chart.RepeatSigns;
import holdfast.chart.TimedChord;
import holdfast.chart.WrittenBar;
import holdfast.chart.WrittenFor;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Charts that are made for practising: bars of a tune in another order, a chord in twelve keys. */
final class PracticeChart {

  private static final int BARS_IN_A_ROW = 4;
  private static final int KEYS = 12;

  private PracticeChart() {}

  /** These bars of a form, played out and in this order, under the chart's heading. */
  static Chart of(Chart chart, Form form, List<Bar> bars, String title) {
    List<WrittenBar> written = new ArrayList<>();
    for (Bar bar : bars) {
      List<TimedChord> chords =
          bar.chords().stream().map(c -> TimedChord.of(c.harmony(), c.lengthBeats())).toList();
      written.add(
          new WrittenBar(new BarContents.Chords(chords), bar.unexpected(), RepeatSigns.NONE));
    }
    Heading old = chart.heading();
    return chart(title, chart.sounding().key(), form.metre(), old.tempo(), old.feel(), written);
  }

  /** A chord and its like in every key, each a fourth above the one before, so many bars each. */
  static Chart inTwelveKeys(Chart chart, ChordSymbol first, int barsEach) {
    List<WrittenBar> bars = new ArrayList<>();
    ChordSymbol chord = new ChordSymbol(first.root(), first.kind(), Optional.empty());
    for (int key = 0; key < KEYS; key++) {
      WrittenBar bar = bar(chord, chart.metre());
      for (int i = 0; i < barsEach; i++) {
        bars.add(bar);
      }
      chord = readable(chord.transpose(Interval.PERFECT_FOURTH));
    }
    return chart(
        first.text() + " in twelve keys",
        Optional.empty(),
        chart.metre(),
        chart.tempo(),
        chart.feel(),
        bars);
  }

  /** Past six flats a root is read as its other name: G♭'s fourth is B, not C♭. */
  private static ChordSymbol readable(ChordSymbol chord) {
    holdfast.theory.NoteName plain = chord.root().simplified();
    boolean odd = plain.alter() < 0 && "CF".contains(plain.letter().name());
    return new ChordSymbol(
        odd ? holdfast.theory.NoteName.plain(plain.pitchClass(), false) : plain,
        chord.kind(),
        Optional.empty());
  }

  private static WrittenBar bar(Harmony harmony, Metre metre) {
    return new WrittenBar(
        new BarContents.Chords(List.of(TimedChord.of(harmony, metre.beats()))),
        false,
        RepeatSigns.NONE);
  }

  private static Chart chart(
      String title,
      Optional<Key> key,
      Metre metre,
      double tempo,
      String feel,
      List<WrittenBar> bars) {
    List<ChartLine> rows = new ArrayList<>();
    for (int first = 0; first < bars.size(); first += BARS_IN_A_ROW) {
      List<WrittenBar> row = bars.subList(first, Math.min(bars.size(), first + BARS_IN_A_ROW));
      rows.add(new ChartLine.Row(row, Optional.empty()));
    }
    Heading heading =
        new Heading(
            title, Optional.empty(), key, metre, tempo, feel, 0, WrittenFor.CONCERT, List.of());
    return new Chart(heading, rows);
  }
}
