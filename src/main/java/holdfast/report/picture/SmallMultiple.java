package holdfast.report.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.List;

/** One value of take after take as a small line of dots, the newest take full and last. */
public final class SmallMultiple {

  private static final double MARGIN = 6;
  private static final double DOT = 2.6;

  private SmallMultiple() {}

  /**
   * Paints into a rectangle whose top left corner is the point.
   *
   * @param values the oldest first, at least one; those that are not a number were not measured
   * @param low what the lower edge stands for
   * @param high what the upper edge stands for, more than {@code low}
   */
  public static void paint(
      Graphics2D g,
      double x,
      double y,
      double width,
      double height,
      List<Double> values,
      double low,
      double high,
      Palette palette) {
    Graphics2D own = (Graphics2D) g.create();
    own.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    own.setStroke(new BasicStroke(0.8f));
    own.setColor(palette.line());
    double bottom = y + height - MARGIN;
    own.draw(new Line2D.Double(x, bottom, x + width, bottom));
    own.setColor(palette.quiet());
    Path2D.Double line = new Path2D.Double();
    boolean begun = false;
    for (int i = 0; i < values.size(); i++) {
      if (!values.get(i).isNaN()) {
        double atX = atX(x, width, i, values.size());
        double atY = atY(y, height, values.get(i), low, high);
        if (begun) {
          line.lineTo(atX, atY);
        } else {
          line.moveTo(atX, atY);
          begun = true;
        }
      }
    }
    if (begun) {
      own.setStroke(new BasicStroke(1.2f));
      own.draw(line);
    }
    for (int i = 0; i < values.size(); i++) {
      if (!values.get(i).isNaN()) {
        boolean isLast = i + 1 == values.size();
        double size = isLast ? DOT * 1.5 : DOT;
        double atX = atX(x, width, i, values.size());
        double atY = atY(y, height, values.get(i), low, high);
        Ellipse2D dot = new Ellipse2D.Double(atX - size, atY - size, 2 * size, 2 * size);
        own.setColor(isLast ? Mark.CARRIED.lineColour(palette) : palette.card());
        own.fill(dot);
        own.setColor(isLast ? Mark.CARRIED.lineColour(palette) : palette.quiet());
        own.draw(dot);
      }
    }
    own.dispose();
  }

  private static double atX(double x, double width, int i, int count) {
    double share = count == 1 ? 0.5 : (double) i / (count - 1);
    return x + MARGIN + share * (width - 2 * MARGIN);
  }

  private static double atY(double y, double height, double value, double low, double high) {
    double share = Math.max(0, Math.min(1, (value - low) / (high - low)));
    return y + height - MARGIN - share * (height - 2 * MARGIN);
  }
}
