package holdfast.report.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * How a phrase is told apart at a glance: by the shape of its dots and by its word; the colour says
 * it again. Colours are from Okabe and Ito, "Color Universal Design" (2008), darkened where text
 * must be read on paper white (WCAG 2.2: words 4.5 : 1, lines 3 : 1).
 */
public enum Mark {
  /** The idea itself, and every phrase that restates it: round dots on a full line. */
  CARRIED("carried", new Color(0x009E73), new Color(0x00705A)),

  /** The idea changed on purpose: square dots on a full line. */
  VARIED("varied", new Color(0xB37A00), new Color(0x8A5A00)),

  /** Something else: hollow dots on a broken line. */
  NEW("new", new Color(0x777777), new Color(0x5C5C5C));

  private static final float LINE_WIDTH = 2f;
  private static final float[] BROKEN = {4f, 3f};

  private final String word;
  private final Color line;
  private final Color text;

  Mark(String word, Color line, Color text) {
    this.word = word;
    this.line = line;
    this.text = text;
  }

  /** The word beside the shape. */
  public String word() {
    return word;
  }

  /** The colour of lines and dots. */
  public Color lineColour() {
    return line;
  }

  /** The colour of words in this mark's meaning, readable on paper white. */
  public Color textColour() {
    return text;
  }

  /** The colour of lines and dots on this paper. */
  public Color lineColour(Palette palette) {
    if (!palette.isDark()) {
      return line;
    }
    return switch (this) {
      case CARRIED -> new Color(0x1FB98E);
      case VARIED -> new Color(0xE69F00);
      case NEW -> palette.quiet();
    };
  }

  /** The colour of words in this mark's meaning, readable on this paper. */
  public Color textColour(Palette palette) {
    if (!palette.isDark()) {
      return text;
    }
    return this == CARRIED ? new Color(0x3CC9A0) : lineColour(palette);
  }

  /** The line between dots. */
  Stroke stroke() {
    return this == NEW
        ? new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, BROKEN, 0f)
        : new BasicStroke(LINE_WIDTH, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  /** A dot of this mark about the point. */
  Shape dot(double x, double y, double radius) {
    return switch (this) {
      case CARRIED, NEW -> new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
      case VARIED ->
          new Rectangle2D.Double(x - radius * .9, y - radius * .9, 1.8 * radius, 1.8 * radius);
    };
  }

  /** Whether dots are only outlined. */
  public boolean isHollow() {
    return this == NEW;
  }

  /** A path through the points, in order. */
  static Path2D path(double[] x, double[] y) {
    Path2D.Double path = new Path2D.Double();
    path.moveTo(x[0], y[0]);
    for (int i = 1; i < x.length; i++) {
      path.lineTo(x[i], y[i]);
    }
    return path;
  }
}
