package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes a chart as the text that reads back as the same chart. */
final class ChartPrinter {

  private final Chart chart;
  private final StringBuilder out = new StringBuilder();
  private boolean atPickup;

  ChartPrinter(Chart chart) {
    this.chart = chart;
    this.atPickup = chart.heading().pickupBeats() > 0;
  }

  String print() {
    printHead();
    boolean first = true;
    for (ChartLine line : chart.lines()) {
      // A blank line parts the head from the body, and a section from the one before.
      if (first || line instanceof ChartLine.SectionName) {
        out.append('\n');
      }
      first = false;
      print(line);
    }
    return out.toString();
  }

  private void printHead() {
    Heading head = chart.heading();
    head.remarks().forEach(this::printRemark);
    printHead(HeadReader.Name.TITLE, head.title());
    head.about().ifPresent(about -> printHead(HeadReader.Name.ABOUT, about));
    head.key().ifPresent(key -> printHead(HeadReader.Name.KEY, key.text()));
    printHead(HeadReader.Name.METRE, head.metre().text());
    printHead(HeadReader.Name.TEMPO, Decimal.text(head.tempo()));
    printHead(HeadReader.Name.FEEL, head.feel());
    if (head.pickupBeats() > 0) {
      printHead(HeadReader.Name.PICKUP, Decimal.text(head.pickupBeats()));
    }
    if (!head.writtenFor().isConcert()) {
      printHead(HeadReader.Name.WRITTEN_FOR, head.writtenFor().pitch().text());
    }
  }

  private void printHead(HeadReader.Name name, String value) {
    out.append(name.text()).append(": ").append(value).append('\n');
  }

  private void printRemark(String words) {
    out.append(words.isEmpty() ? "--" : "-- " + words).append('\n');
  }

  private void print(ChartLine line) {
    if (line instanceof ChartLine.RemarkLine remark) {
      printRemark(remark.text());
    } else if (line instanceof ChartLine.SectionName section) {
      out.append('[').append(section.name()).append(']');
      endLine(section.remark());
    } else if (line instanceof ChartLine.Row row) {
      print(row.bars());
      endLine(row.remark());
    }
  }

  private void endLine(Optional<String> remark) {
    remark.ifPresent(words -> out.append(" -- ").append(words));
    out.append('\n');
  }

  private void print(List<WrittenBar> bars) {
    RepeatSigns left = RepeatSigns.NONE;
    for (WrittenBar bar : bars) {
      out.append(barLine(left, bar.signs())).append(' ');
      if (bar.unexpected()) {
        out.append("! ");
      }
      out.append(contents(bar.contents())).append(' ');
      left = bar.signs();
      atPickup = false;
    }
    out.append(barLine(left, RepeatSigns.NONE));
  }

  /** The line between a bar with these signs and the next one with those. */
  static String barLine(RepeatSigns left, RepeatSigns right) {
    StringBuilder line = new StringBuilder();
    line.append(left.closes() ? ":" : "");
    line.append(left.doubleLine() ? "||" : "|");
    line.append(right.opens() ? ":" : "");
    line.append(left.plays() > 2 ? left.plays() + "x" : "");
    if (right.startsEnding()) {
      line.append(left.plays() > 2 ? " " : "");
      line.append(
          right.ending().stream().map(String::valueOf).collect(Collectors.joining(",", "", ".")));
    }
    return line.toString();
  }

  private String contents(BarContents contents) {
    if (contents instanceof BarContents.OneBarRepeat) {
      return "%";
    }
    if (contents instanceof BarContents.TwoBarRepeat) {
      return "%%";
    }
    double barBeats = atPickup ? chart.heading().pickupBeats() : chart.metre().beats();
    return BarWords.of(((BarContents.Chords) contents).chords(), barBeats, Harmony::text);
  }
}
