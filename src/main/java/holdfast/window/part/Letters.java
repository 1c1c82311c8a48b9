package holdfast.window.part;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;

/** Words inside a painted picture, never wider than their place. */
public final class Letters {

  /** Smaller letters than this nobody reads, in points; then the end is left out. */
  private static final float SMALLEST = 8f;

  private Letters() {}

  /** Makes lines and letters smooth. */
  public static void smooth(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
  }

  /** The font, made smaller until the text is no wider than its place. */
  public static Font fitting(Graphics2D g, String text, Font font, double width) {
    double wanted = g.getFontMetrics(font).stringWidth(text);
    if (wanted <= width || wanted == 0) {
      return font;
    }
    float size = (float) Math.max(SMALLEST, font.getSize2D() * width / wanted * 0.98);
    return font.deriveFont(size);
  }

  /** Draws from the left; returns how wide it was. */
  public static int left(
      Graphics2D g, String text, Font font, double x, double baseline, double width) {
    Font fitted = fitting(g, text, font, width);
    FontMetrics metrics = g.getFontMetrics(fitted);
    String shown = text;
    while (shown.length() > 1 && metrics.stringWidth(shown) > width + 1) {
      shown = shown.substring(0, shown.length() - 2) + "…";
    }
    g.setFont(fitted);
    g.drawString(shown, (float) x, (float) baseline);
    return metrics.stringWidth(shown);
  }

  /** Draws to the right end; returns how wide it was. */
  public static int right(
      Graphics2D g, String text, Font font, double xEnd, double baseline, double width) {
    Font fitted = fitting(g, text, font, width);
    int wide = g.getFontMetrics(fitted).stringWidth(text);
    left(g, text, fitted, xEnd - Math.min(wide, width), baseline, width);
    return wide;
  }

  /** Draws in the middle of a place. */
  public static void middle(
      Graphics2D g, String text, Font font, double x, double baseline, double width) {
    Font fitted = fitting(g, text, font, width);
    int wide = g.getFontMetrics(fitted).stringWidth(text);
    left(g, text, fitted, x + Math.max(0, (width - wide) / 2), baseline, width);
  }
}
