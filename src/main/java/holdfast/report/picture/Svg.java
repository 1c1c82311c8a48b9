package holdfast.report.picture;

import java.awt.Graphics2D;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.Consumer;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/** Turns what a painter draws into an SVG element that stands in an HTML page. */
public final class Svg {

  private Svg() {}

  /**
   * The picture as an element that scales with its place on the page.
   *
   * @param id unique on the page; names the element's own definitions
   */
  public static String of(String id, double width, double height, Consumer<Graphics2D> painter) {
    SVGGraphics2D g = new SVGGraphics2D(width, height);
    g.setDefsKeyPrefix(id + "_");
    // Two decimals are finer than any printer.
    g.setGeomDoubleConverter(Svg::hundredths);
    g.setTransformDoubleConverter(Svg::hundredths);
    painter.accept(g);
    return g.getSVGElement(null, false, new ViewBox(0, 0, (int) width, (int) height), null, null);
  }

  private static String hundredths(double length) {
    return BigDecimal.valueOf(length)
        .setScale(2, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }
}
