package holdfast.chart;

import holdfast.theory.Interval;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes a chart as a MusicXML 4.0 score of one part: chord symbols over slashes, with the signs of
 * repetition. A bar that is only a repeat sign carries its chords unprinted, so that a reader who
 * passes over the sign still knows what sounds.
 */
final class MusicXmlWriter {

  private final Chart chart;
  private final Metre metre;
  private final XmlPage page = new XmlPage();
  private final MusicXmlChordWriter chords = new MusicXmlChordWriter(page);
  private final MusicXmlBarlines barlines;
  private final MusicXmlRests rests;
  private final MusicXmlHead head;

  /** What sounds in each bar of the page, the first time it is played. */
  private final Map<Integer, Bar> played = new HashMap<>();

  /** The bar to come, as musicians count on the page. */
  private int number;

  /** How many bars the repeat sign repeats that stands for the bar before; 0 for none. */
  private int repeating;

  MusicXmlWriter(Chart chart) {
    this.chart = chart;
    this.metre = chart.metre();
    this.number = chart.heading().pickupBeats() > 0 ? 0 : 1;
    Form form = chart.formAsWritten();
    form.pickup().ifPresent(bar -> played.put(0, bar));
    form.bars().forEach(bar -> played.putIfAbsent(bar.writtenNumber(), bar));
    this.barlines = new MusicXmlBarlines(page, chart.writtenBars());
    this.head = new MusicXmlHead(page, metre);
    this.rests = new MusicXmlRests(page, lengths());
  }

  private List<Double> lengths() {
    List<Double> lengths = new ArrayList<>();
    for (Bar bar : played.values()) {
      for (ChordSpan span : bar.chords()) {
        lengths.add(quarters(span.endBeat() - bar.startBeat()));
      }
    }
    return lengths;
  }

  String write() {
    head.document();
    page.open("score-partwise", "version", "4.0");
    writeHead();
    page.open("part", "id", "P1");
    writeMeasures();
    page.close().close();
    return page.toString();
  }

  private void writeHead() {
    Heading heading = chart.heading();
    page.open("work").leaf("work-title", heading.title()).close();
    page.open("identification");
    page.open("encoding").leaf("software", "Holdfast").close();
    page.open("miscellaneous");
    heading.about().ifPresent(about -> page.leaf("miscellaneous-field", about, "name", "about"));
    page.leaf("miscellaneous-field", heading.feel(), "name", "feel");
    page.close().close();
    page.open("part-list").open("score-part", "id", "P1");
    page.leaf("part-name", "Chords").close().close();
  }

  private void writeMeasures() {
    int index = 0;
    Optional<String> section = Optional.empty();
    for (ChartLine line : chart.lines()) {
      if (line instanceof ChartLine.SectionName named) {
        section = Optional.of(named.name());
      } else if (line instanceof ChartLine.Row row) {
        for (int i = 0; i < row.bars().size(); i++) {
          writeBar(index, row.bars().get(i), i == 0, section);
          section = Optional.empty();
          index++;
        }
      }
    }
  }

  private void writeBar(int index, WrittenBar bar, boolean startsRow, Optional<String> section) {
    int measures = bar.contents().barCount();
    for (int i = 0; i < measures; i++) {
      openMeasure();
      if (i == 0) {
        if (startsRow && index > 0) {
          page.leaf("print", "", "new-system", "yes");
        }
        barlines.writeLeft(index);
      }
      writeAttributes(index == 0 && i == 0, repeats(bar.contents()));
      if (i == 0) {
        section.ifPresent(name -> head.above("rehearsal", name));
        if (bar.unexpected()) {
          head.above("words", MusicXmlPart.UNEXPECTED);
        }
        if (index == 0) {
          head.tempo(chart.tempo());
        }
      }
      writeChords(bar.contents());
      if (i == measures - 1) {
        barlines.writeRight(index);
      }
      page.close();
      number++;
    }
  }

  private void openMeasure() {
    if (number == 0) {
      page.open("measure", "number", "0", "implicit", "yes");
    } else {
      page.open("measure", "number", String.valueOf(number));
    }
  }

  private static int repeats(BarContents contents) {
    return contents instanceof BarContents.Chords ? 0 : contents.barCount();
  }

  private void writeAttributes(boolean startsScore, int repeats) {
    if (!startsScore && repeats == repeating) {
      return;
    }
    page.open("attributes");
    if (startsScore) {
      writeFirstAttributes();
    }
    if (repeating > 0) {
      page.open("measure-style").leaf("measure-repeat", "", "type", "stop").close();
    }
    if (repeats > 0) {
      page.open("measure-style");
      page.leaf("measure-repeat", String.valueOf(repeats), "type", "start").close();
    }
    repeating = repeats;
    page.close();
  }

  private void writeFirstAttributes() {
    page.leaf("divisions", String.valueOf(rests.divisions()));
    chart.key().ifPresent(head::key);
    head.time();
    page.open("clef").leaf("sign", "G").leaf("line", "2").close();
    WrittenFor instrument = chart.heading().writtenFor();
    if (!instrument.isConcert()) {
      Interval down = instrument.fromSoundingToWritten().reversed();
      page.open("transpose").leaf("diatonic", String.valueOf(down.letterSteps()));
      page.leaf("chromatic", String.valueOf(down.semitones())).close();
    }
    // Rests under chord symbols look like slashes, as on a lead sheet.
    page.open("measure-style").leaf("slash", "", "type", "start", "use-stems", "no").close();
  }

  /** Chords with rests under them that last as long; a chord that goes on is not written again. */
  private void writeChords(BarContents contents) {
    boolean isRepeat = repeats(contents) > 0;
    boolean goesOn =
        contents instanceof BarContents.Chords written
            && written.chords().get(0).harmony().isEmpty();
    Bar bar = played.get(number);
    for (ChordSpan span : bar.chords()) {
      boolean isFirst = span.startBeat() == bar.startBeat();
      if (!isFirst || !goesOn) {
        chords.write(span.harmony(), isRepeat);
      }
      rests.write(
          quarters(span.startBeat() - bar.startBeat()), quarters(span.endBeat() - bar.startBeat()));
    }
  }

  private double quarters(double beats) {
    return beats * metre.quartersPerBeat();
  }
}
