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

/** A bar for each take, the oldest first. */
final class ProgressPicture extends Picture {

  private static final long serialVersionUID = 1L;

  private static final int MOST_BARS = 60;

  private final transient Kit kit;
  private final String words;
  private final transient List<Double> shares;

  private ProgressPicture(Kit kit, List<Double> newestFirst, String words) {
    this.kit = kit;
    this.words = words;
    List<Double> found = new ArrayList<>(newestFirst.stream().limit(MOST_BARS).toList());
    Collections.reverse(found);
    this.shares = List.copyOf(found);
    setBackground(kit.palette().paper());
  }

  /**
   * Bars as high as the part of the phrases that carried the idea.
   *
   * @param newestFirst as the book lists them
   */
  static ProgressPicture ofCarrying(Kit kit, List<Entry> newestFirst) {
    List<Double> found =
        newestFirst.stream()
            .filter(take -> take.fluency().isEmpty())
            .map(take -> take.share().orElse(0))
            .toList();
    String words =
        found.isEmpty()
            ? kit.words().say("book.empty")
            : kit.words().say("book.progress-words", found.size(), Math.round(100 * found.get(0)));
    return new ProgressPicture(kit, found, words);
  }

  /**
   * Bars as high as the different ideas a minute, beside the best session.
   *
   * @param newestFirst as the book lists them, with one session at least
   */
  static ProgressPicture ofInventing(Kit kit, List<Entry> newestFirst) {
    List<Double> found =
        newestFirst.stream()
            .flatMap(take -> take.fluency().stream())
            .map(Entry.Fluency::perMinute)
            .toList();
    double best = Math.max(Double.MIN_NORMAL, Collections.max(found));
    return new ProgressPicture(
        kit,
        found.stream().map(each -> each / best).toList(),
        kit.words().say("book.fluency-words", found.size(), Math.round(found.get(0))));
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(300), kit.look().px(70));
  }

  @Override
  protected String inWords() {
    return words;
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
