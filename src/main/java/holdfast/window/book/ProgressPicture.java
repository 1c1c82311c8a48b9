package holdfast.window.book;

import holdfast.book.Entry;
import holdfast.report.picture.Mark;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A bar for each take, the oldest first: as high as the part of its phrases that carried. */
final class ProgressPicture extends Picture {

  private static final long serialVersionUID = 1L;

  private static final int MOST_BARS = 60;

  private final transient Kit kit;
  private final int takes;
  private final transient List<Double> shares;

  /**
   * A picture of these.
   *
   * @param newestFirst as the book lists them
   */
  ProgressPicture(Kit kit, List<Entry> newestFirst) {
    this.kit = kit;
    this.takes = newestFirst.size();
    List<Double> found = new ArrayList<>();
    newestFirst.stream().limit(MOST_BARS).forEach(entry -> found.add(entry.share().orElse(0)));
    Collections.reverse(found);
    this.shares = List.copyOf(found);
    setBackground(kit.palette().paper());
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(300), kit.look().px(70));
  }

  @Override
  protected String inWords() {
    return shares.isEmpty()
        ? kit.words().say("book.empty")
        : kit.words()
            .say("book.progress-words", takes, Math.round(100 * shares.get(shares.size() - 1)));
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    double step = Math.min(kit.look().px(22), (double) getWidth() / Math.max(1, shares.size()));
    double room = getHeight() - 2.0;
    g.setColor(kit.palette().line());
    g.draw(new Line2D.Double(0, room, getWidth(), room));
    g.draw(new Line2D.Double(0, 0.5, getWidth(), 0.5));
    g.setColor(Mark.CARRIED.lineColour(kit.palette()));
    for (int i = 0; i < shares.size(); i++) {
      double height = Math.max(2, shares.get(i) * room);
      g.fill(new Rectangle2D.Double(i * step, room - height, step * 0.75, height));
    }
    g.dispose();
  }
}
