package holdfast.window.play;

import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.RoundRectangle2D;

/** "I hear you": a light and how loud. */
public final class EarLight extends Picture {

  private static final long serialVersionUID = 1L;

  private static final int STEPS = 14;

  private final transient Kit kit;
  private String source;
  private boolean hearing;
  private boolean listening = true;
  private int step;

  /** A light for this source. */
  public EarLight(Kit kit, String source) {
    this.kit = kit;
    this.source = source;
    setBackground(kit.palette().paper());
  }

  /** Who is listened to. */
  public void setSource(String name) {
    source = name;
    repaint();
  }

  /**
   * What is heard now.
   *
   * @param level 0 to 1
   */
  public void show(boolean nowHearing, boolean nowListening, double level) {
    int now = (int) Math.round(STEPS * Math.max(0, Math.min(1, level)));
    if (nowHearing != hearing || nowListening != listening || now != step) {
      hearing = nowHearing;
      listening = nowListening;
      step = now;
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    FontMetrics metrics = getFontMetrics(kit.font(1));
    int words =
        Math.max(
            metrics.stringWidth(kit.words().say("ear.hearing")),
            metrics.stringWidth(kit.words().say("ear.gone")));
    return new Dimension(
        Math.max(kit.look().px(170), words + kit.look().px(44)),
        metrics.getHeight() * 2 + kit.look().px(24));
  }

  @Override
  protected String inWords() {
    return source + ": " + state();
  }

  private String state() {
    return kit.words().say(!listening ? "ear.gone" : hearing ? "ear.hearing" : "ear.listening");
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    double line = g.getFontMetrics(kit.font(1)).getHeight();
    double light = line * 0.7;
    double x = 1;
    g.setColor(hearing ? kit.palette().played() : kit.palette().line());
    Ellipse2D dot = new Ellipse2D.Double(x, line * 0.25, light, light);
    if (hearing) {
      g.fill(dot);
    } else {
      g.setStroke(new java.awt.BasicStroke(2f));
      g.draw(dot);
    }
    g.setColor(listening ? kit.palette().ink() : kit.palette().now());
    double text = x + light + kit.look().px(8);
    Letters.left(g, state(), kit.look().bold(1), text, line * 0.82, getWidth() - text);
    g.setColor(kit.palette().quiet());
    Letters.left(g, source, kit.font(0.9), x, line * 1.8, getWidth() - x);
    double top = line * 2 + kit.look().px(4);
    double width = (getWidth() - 2 * x) / STEPS;
    for (int i = 0; i < STEPS; i++) {
      g.setColor(i < step ? kit.palette().played() : kit.palette().line());
      g.fill(new RoundRectangle2D.Double(x + i * width, top, width - 2, kit.look().px(9), 3, 3));
    }
    g.dispose();
  }
}
