package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A chart as people read it in a terminal: four bars a line under one another, the number of each
 * line's first bar before it, unexpected bars marked with {@code !}.
 */
public final class ChartGrid {

  private static final int BARS_IN_A_LINE = 4;

  /** How note names and chord symbols are shown. */
  public enum Signs {
    /** With the signs of print: E♭, F♯. */
    PRINTED,
    /** As typed, for a screen without those signs: Eb, F#. */
    TYPED
  }

  /** A bar in the grid: the line at its left, what stands in it, and how many bars that is. */
  private record Cell(String leftLine, String words, int bars) {}

  /** Cells side by side, and the bar line that ends them. */
  private record Line(int firstBar, List<Cell> cells, String endLine) {}

  private final Chart chart;
  private final Signs signs;

  private ChartGrid(Chart chart, Signs signs) {
    this.chart = chart;
    this.signs = signs;
  }

  /** The chart as it is written, with its repeat signs and endings. */
  public static String written(Chart chart, Signs signs) {
    ChartGrid grid = new ChartGrid(chart, signs);
    return grid.head() + grid.body(grid.writtenBars());
  }

  /** One chorus as it is played, bar after bar, in the pitch that the chart is written in. */
  public static String played(Chart chart, Signs signs) {
    ChartGrid grid = new ChartGrid(chart, signs);
    return grid.head() + grid.body(grid.playedBars());
  }

  private String head() {
    Heading head = chart.heading();
    List<String> facts = new ArrayList<>();
    head.key().ifPresent(key -> facts.add(show(key.display(), key.text())));
    facts.add(head.metre().text());
    facts.add(Decimal.text(Math.rint(head.tempo() * 10) / 10) + " beats a minute");
    facts.add(head.feel());
    if (!head.writtenFor().isConcert()) {
      WrittenFor instrument = head.writtenFor();
      facts.add(
          "written for "
              + show(instrument.pitch().display(), instrument.pitch().text())
              + chart
                  .sounding()
                  .key()
                  .map(k -> ", sounds in " + show(k.display(), k.text()))
                  .orElse(""));
    }
    StringBuilder out = new StringBuilder(head.title()).append('\n');
    head.about().ifPresent(about -> out.append(about).append('\n'));
    out.append(String.join(", ", facts)).append('\n');
    head.remarks().forEach(remark -> out.append(remark).append('\n'));
    return out.append('\n').toString();
  }

  private String show(String printed, String typed) {
    return signs == Signs.PRINTED ? printed : typed;
  }

  private String symbol(Harmony harmony) {
    return show(harmony.display(), harmony.text());
  }

  /** A bar on its way into the grid. */
  private record GridBar(
      int number,
      Optional<String> section,
      RepeatSigns signs,
      boolean unexpected,
      String words,
      int bars) {}

  private List<GridBar> writtenBars() {
    List<GridBar> bars = new ArrayList<>();
    int number = chart.heading().pickupBeats() > 0 ? 0 : 1;
    Optional<String> section = Optional.empty();
    for (ChartLine line : chart.lines()) {
      if (line instanceof ChartLine.SectionName named) {
        section = Optional.of(named.name());
      } else if (line instanceof ChartLine.Row row) {
        for (WrittenBar bar : row.bars()) {
          int count = bar.contents().barCount();
          String words = words(bar.contents(), beats(number));
          bars.add(new GridBar(number, section, bar.signs(), bar.unexpected(), words, count));
          number += count;
          section = Optional.empty();
        }
      }
    }
    return bars;
  }

  private List<GridBar> playedBars() {
    List<GridBar> bars = new ArrayList<>();
    Form form = chart.formAsWritten();
    List<Bar> inOrder = new ArrayList<>();
    form.pickup().ifPresent(inOrder::add);
    inOrder.addAll(form.bars());
    Optional<String> section = Optional.empty();
    for (Bar bar : inOrder) {
      boolean isNew = !bar.section().equals(section);
      section = bar.section();
      bars.add(played(bar, isNew ? section : Optional.empty()));
    }
    return bars;
  }

  private GridBar played(Bar bar, Optional<String> section) {
    List<TimedChord> chords =
        bar.chords().stream().map(c -> TimedChord.of(c.harmony(), c.lengthBeats())).toList();
    String words = BarWords.of(chords, beats(bar.number()), this::symbol);
    return new GridBar(bar.number(), section, RepeatSigns.NONE, bar.unexpected(), words, 1);
  }

  private double beats(int number) {
    return number == 0 ? chart.heading().pickupBeats() : chart.metre().beats();
  }

  private String words(BarContents contents, double beats) {
    return contents instanceof BarContents.Chords chords
        ? BarWords.of(chords.chords(), beats, this::symbol)
        : contents.barCount() == 1 ? "%" : "%%";
  }

  private String body(List<GridBar> bars) {
    List<Line> lines = new ArrayList<>();
    List<Optional<String>> sections = new ArrayList<>();
    int i = 0;
    while (i < bars.size()) {
      int end = endOfLine(bars, i);
      lines.add(line(bars, i, end));
      sections.add(bars.get(i).section());
      i = end;
    }
    int numberWidth = String.valueOf(bars.get(bars.size() - 1).number()).length();
    StringBuilder out = new StringBuilder();
    for (int l = 0; l < lines.size(); l++) {
      boolean isFirst = l == 0;
      sections
          .get(l)
          .ifPresent(
              name -> out.append(isFirst ? "" : "\n").append('[').append(name).append("]\n"));
      append(out, lines.get(l), lines, numberWidth);
    }
    if (bars.stream().anyMatch(GridBar::unexpected)) {
      out.append("\n! marks a bar that the ear does not expect.\n");
    }
    return out.toString();
  }

  /** A line ends after four bars, before a section, and behind the pick-up. */
  private static int endOfLine(List<GridBar> bars, int from) {
    int count = 0;
    int end = from;
    while (end < bars.size() && count < BARS_IN_A_LINE) {
      boolean startsSection = end > from && bars.get(end).section().isPresent();
      if (startsSection || (end > from && bars.get(end - 1).number() == 0)) {
        break;
      }
      count += bars.get(end).bars();
      end++;
    }
    return end;
  }

  private static Line line(List<GridBar> bars, int from, int end) {
    List<Cell> cells = new ArrayList<>();
    RepeatSigns left = RepeatSigns.NONE;
    for (GridBar bar : bars.subList(from, end)) {
      String words = (bar.unexpected() ? "! " : "") + bar.words();
      cells.add(new Cell(ChartPrinter.barLine(left, bar.signs()), words, bar.bars()));
      left = bar.signs();
    }
    return new Line(bars.get(from).number(), cells, ChartPrinter.barLine(left, RepeatSigns.NONE));
  }

  private static void append(StringBuilder out, Line line, List<Line> all, int numberWidth) {
    out.append(("%" + numberWidth + "d  ").formatted(line.firstBar()));
    for (int column = 0; column < line.cells().size(); column++) {
      Cell cell = line.cells().get(column);
      int lineWidth = widest(all, column, Cell::leftLine);
      int wordsWidth = widest(all, column, Cell::words);
      out.append(" ".repeat(lineWidth - width(cell.leftLine()))).append(cell.leftLine());
      out.append(' ').append(cell.words());
      out.append(" ".repeat(wordsWidth - width(cell.words()) + 1));
    }
    out.append(line.endLine()).append('\n');
  }

  private static int widest(List<Line> lines, int column, Function<Cell, String> part) {
    return lines.stream()
        .filter(line -> line.cells().size() > column)
        .mapToInt(line -> width(part.apply(line.cells().get(column))))
        .max()
        .orElse(0);
  }

  private static int width(String text) {
    return text.codePointCount(0, text.length());
  }
}
