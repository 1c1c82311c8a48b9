package holdfast.window.play;

import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.util.Optional;

/** What was said last: a sign, a word, and what happened to the idea. */
final class VerdictLine extends Picture {

  private static final long serialVersionUID = 1L;

  private final transient Kit kit;
  private transient Optional<Mark> mark = Optional.empty();
  private String word = "";
  private String words = "";

  VerdictLine(Kit kit) {
    this.kit = kit;
    setBackground(kit.palette().paper());
  }

  /** A verdict. */
  void say(Mark what, String strong, String more) {
    show(Optional.of(what), strong, more);
  }

  /** A sentence without a verdict. */
  void say(String sentence) {
    show(Optional.empty(), "", sentence);
  }

  private void show(Optional<Mark> what, String strong, String more) {
    mark = what;
    word = strong;
    words = more;
    repaint();
    getAccessibleContext()
        .firePropertyChange(
            javax.accessibility.AccessibleContext.ACCESSIBLE_NAME_PROPERTY, "", inWords());
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(
        kit.look().px(300),
        (int) Math.ceil(getFontMetrics(kit.look().bold(1.25)).getHeight() * 1.2));
  }

  @Override
  protected String inWords() {
    return word.isEmpty() ? words : word + ": " + words;
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    double baseline = getHeight() * 0.72;
    double x = 2;
    if (mark.isPresent()) {
      double size = kit.look().px(10) / 6.4;
      Graphics2D sign = (Graphics2D) g.create();
      sign.translate(x + kit.look().px(7), baseline - kit.look().px(5));
      sign.scale(size, size);
      ShapePainter.dot(sign, 0, 0, mark.get(), kit.palette());
      sign.dispose();
      x += kit.look().px(20);
      g.setColor(mark.get().textColour(kit.palette()));
      x += Letters.left(g, word, kit.look().bold(1.25), x, baseline, getWidth() * 0.35);
      x += kit.look().px(10);
    }
    g.setColor(kit.palette().ink());
    Letters.left(g, words, kit.font(1.15), x, baseline, getWidth() - x);
    g.dispose();
  }
}
