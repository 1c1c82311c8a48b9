package holdfast.window.charts;

import holdfast.chart.Bar;
import holdfast.chart.Chart;
import holdfast.chart.ChordSpan;
import holdfast.window.NoteNaming;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** A chart as it is played, four bars a line; a click on a bar marks or unmarks it. */
final class ChartSheet extends Picture {

  private static final long serialVersionUID = 1L;

  private static final int BARS_IN_A_LINE = 4;

  private final transient Kit kit;
  private final NoteNaming naming;
  private transient Optional<Chart> chart = Optional.empty();
  private transient List<Bar> bars = List.of();

  ChartSheet(Kit kit, NoteNaming naming) {
    this.kit = kit;
    this.naming = naming;
    setBackground(kit.palette().card());
  }

  /** Shows this chart as it is written. */
  void show(Chart shown) {
    chart = Optional.of(shown);
    bars = shown.formAsWritten().bars();
    revalidate();
    repaint();
  }

  /** Tells which bar was clicked. */
  void onBar(Consumer<Bar> told) {
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            bars.stream()
                .filter(bar -> cell(bar).contains(event.getPoint()))
                .findFirst()
                .ifPresent(told);
          }
        });
  }

  private double rowHeight() {
    return kit.look().px(46);
  }

  /** Where a bar lies. */
  Rectangle2D cell(Bar bar) {
    int index = bar.number() - 1;
    double width = (getWidth() - 2.0) / BARS_IN_A_LINE;
    return new Rectangle2D.Double(
        1 + index % BARS_IN_A_LINE * width,
        1.0 + Math.floorDiv(index, BARS_IN_A_LINE) * rowHeight(),
        width,
        rowHeight() - kit.look().px(8));
  }

  @Override
  public Dimension getPreferredSize() {
    int rows = (bars.size() + BARS_IN_A_LINE - 1) / BARS_IN_A_LINE;
    return new Dimension(kit.look().px(420), (int) (rows * rowHeight()) + 3);
  }

  @Override
  protected String inWords() {
    return chart.map(Chart::title).orElse("")
        + ": "
        + bars.stream().map(this::words).collect(Collectors.joining(" | "));
  }

  private String words(Bar bar) {
    return (bar.unexpected() ? "! " : "")
        + bar.chords().stream()
            .map(span -> naming.chord(span.harmony()))
            .collect(Collectors.joining(" "));
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    for (Bar bar : bars) {
      Rectangle2D cell = cell(bar);
      if (bar.unexpected()) {
        g.setColor(kit.palette().turn());
        g.setStroke(new BasicStroke(2f));
        g.draw(
            new Rectangle2D.Double(
                cell.getX() + 2, cell.getY(), cell.getWidth() - 4, cell.getHeight()));
      }
      g.setColor(kit.palette().quiet());
      g.setStroke(new BasicStroke(1.4f));
      g.draw(new Line2D.Double(cell.getX(), cell.getY() + 4, cell.getX(), cell.getMaxY() - 4));
      if (bar.number() == bars.size() || bar.number() % BARS_IN_A_LINE == 0) {
        g.draw(
            new Line2D.Double(
                cell.getMaxX() - 1, cell.getY() + 4, cell.getMaxX() - 1, cell.getMaxY() - 4));
      }
      Font font = kit.look().bold(1.2);
      List<ChordSpan> spans = bar.chords();
      g.setColor(kit.palette().ink());
      for (int i = 0; i < spans.size(); i++) {
        double share = cell.getWidth() / spans.size();
        String name = naming.chord(spans.get(i).harmony());
        Letters.left(
            g,
            bar.unexpected() && i == 0 ? "! " + name : name,
            font,
            cell.getX() + i * share + kit.look().px(8),
            cell.getY() + cell.getHeight() * 0.66,
            share - kit.look().px(12));
      }
    }
    g.dispose();
  }
}
