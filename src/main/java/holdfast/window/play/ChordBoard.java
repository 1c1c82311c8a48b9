package holdfast.window.play;

import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.Optional;

/**
 * Where we are, to be read from two metres away: the chord, the chord after it, the beat, the bar.
 */
final class ChordBoard extends Picture {

  private static final long serialVersionUID = 1L;

  /** The part of its width that the chord has. */
  private static final double CHORD_SHARE = 0.44;

  private static final double NEXT_SHARE = 0.24;

  private final transient Kit kit;
  private transient Optional<Place> place = Optional.empty();

  /**
   * What is shown.
   *
   * @param chorus from 1; 0 while it is counted in
   * @param choruses how many there are; 0 for without end
   * @param turnAhead the chord of the next bar, where the ear does not expect it
   */
  record Place(
      String chord,
      String next,
      int beat,
      int beatsInBar,
      int bar,
      int bars,
      int chorus,
      int choruses,
      Optional<String> turnAhead) {

    /** The same on another beat. */
    Place at(int other) {
      return new Place(chord, next, other, beatsInBar, bar, bars, chorus, choruses, turnAhead);
    }
  }

  ChordBoard(Kit kit) {
    this.kit = kit;
    setBackground(kit.palette().paper());
  }

  /** Shows another place; paints only where it differs. */
  void show(Place now) {
    Optional<Place> before = place;
    place = Optional.of(now);
    if (before.isEmpty() || !before.get().at(now.beat()).equals(now)) {
      repaint();
    } else if (before.get().beat() != now.beat()) {
      repaint(beats());
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(520), kit.look().px(96));
  }

  @Override
  protected String inWords() {
    return place.map(this::words).orElse(kit.words().say("play.ready"));
  }

  private String words(Place p) {
    return p.chord() + ", " + kit.words().say("play.next") + " " + p.next() + ", " + where(p);
  }

  private String where(Place p) {
    if (p.chorus() == 0) {
      return kit.words().say("play.count-in");
    }
    String bar = kit.words().say("play.bar", p.bar(), p.bars());
    return p.choruses() == 0
        ? bar + " · " + kit.words().say("play.chorus", p.chorus())
        : bar + " · " + kit.words().say("play.chorus-of", p.chorus(), p.choruses());
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (place.isPresent()) {
      paint(g, place.get());
    } else {
      g.setColor(kit.palette().quiet());
      Letters.left(
          g, kit.words().say("play.ready"), kit.font(1.4), 0, getHeight() * 0.8, getWidth());
    }
    g.dispose();
  }

  private void paint(Graphics2D g, Place p) {
    double w = getWidth();
    double h = getHeight();
    Rectangle dots = beats();
    beats(g, p, dots.x, h * 0.30, Math.min(w - dots.x, h * 0.32 * p.beatsInBar()), h * 0.26);
    Rectangle clip = g.getClipBounds();
    if (clip != null && dots.contains(clip)) {
      return;
    }
    double chordWidth = w * CHORD_SHARE;
    Font base = kit.font(1);
    Font large = base.deriveFont(Font.BOLD, (float) (h * 0.78));
    g.setColor(kit.palette().ink());
    double baseline = h * 0.80;
    Letters.left(g, p.chord(), large, 0, baseline, chordWidth - kit.look().px(12));

    double x = chordWidth;
    double nextWidth = w * NEXT_SHARE;
    float smallSize = (float) Math.min(base.getSize2D(), h * 0.19);
    Font small = base.deriveFont(smallSize);
    g.setColor(kit.palette().quiet());
    Letters.left(g, kit.words().say("play.next"), small, x, h * 0.26, nextWidth);
    g.setColor(kit.palette().ink());
    Font middle = base.deriveFont(Font.BOLD, (float) (h * 0.40));
    Letters.left(g, p.next(), middle, x, baseline, nextWidth - kit.look().px(12));

    double left = x + nextWidth;
    double room = w - left;
    g.setColor(kit.palette().ink());
    Font plain = base.deriveFont((float) Math.min(base.getSize2D() * 1.15, h * 0.22));
    Letters.left(g, where(p), plain, left, h * 0.66, room);
    if (p.turnAhead().isPresent()) {
      double size = h * 0.16;
      warn(g, left, h * 0.90, size);
      g.setColor(kit.palette().ink());
      Letters.left(
          g,
          kit.words().say("play.turn-ahead", p.turnAhead().get()),
          plain.deriveFont(Font.BOLD),
          left + size * 1.5,
          h * 0.90,
          room - size * 1.5);
    }
  }

  /** The place of the beats: they move, the words beside them stay. */
  private Rectangle beats() {
    int left = (int) Math.floor(getWidth() * (CHORD_SHARE + NEXT_SHARE));
    return new Rectangle(left, 0, getWidth() - left, (int) Math.ceil(getHeight() * 0.34));
  }

  private void beats(
      Graphics2D g, Place p, double left, double baseline, double room, double most) {
    double step = room / p.beatsInBar();
    double radius = Math.min(most, step * 0.8) / 2;
    for (int beat = 1; beat <= p.beatsInBar(); beat++) {
      double cx = left + radius + (beat - 1) * step;
      double cy = baseline - radius;
      Ellipse2D dot = new Ellipse2D.Double(cx - radius, cy - radius, 2 * radius, 2 * radius);
      boolean isNow = beat == p.beat();
      g.setColor(isNow ? kit.palette().now() : kit.palette().line());
      if (isNow) {
        g.fill(dot);
      } else {
        g.setStroke(new BasicStroke(2f));
        g.draw(dot);
      }
    }
  }

  private void warn(Graphics2D g, double x, double baseline, double size) {
    Path2D sign = new Path2D.Double();
    sign.moveTo(x, baseline);
    sign.lineTo(x + size * 0.6, baseline - size);
    sign.lineTo(x + size * 1.2, baseline);
    sign.closePath();
    g.setColor(kit.palette().turn());
    g.fill(sign);
  }
}
