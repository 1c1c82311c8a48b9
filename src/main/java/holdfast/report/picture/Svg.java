package holdfast.report.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/**
 * Turns what a painter draws into an SVG element that stands in an HTML page. Colours of the
 * palette become the page's own ({@code var(--ink)}), so that a dark page shows a dark picture.
 */
public final class Svg {

  /** How a colour begins in the text of a picture. */
  private static final String COLOUR = "rgb(";

  private static final Map<String, String> PROPERTIES = properties();

  /** Farther from the middle of two hundredths than this, a double rounds as its decimals do. */
  private static final double CLEARLY = 1e-6;

  /** Above this, a millionth of a hundredth is finer than a double. */
  private static final double LARGE = 1e6;

  private Svg() {}

  /**
   * The picture as an element that scales with its place on the page.
   *
   * @param id unique on the page; names the element's own definitions
   * @param painter draws in the colours of {@link Palette#LIGHT}
   */
  public static String of(String id, double width, double height, Consumer<Graphics2D> painter) {
    SVGGraphics2D g = new SVGGraphics2D(width, height);
    g.setDefsKeyPrefix(id + "_");
    // Two decimals are finer than any printer.
    g.setGeomDoubleConverter(Svg::hundredths);
    g.setTransformDoubleConverter(Svg::hundredths);
    painter.accept(g);
    String svg =
        g.getSVGElement(
            null,
            false,
            new ViewBox(0, 0, (int) Math.ceil(width), (int) Math.ceil(height)),
            null,
            null);
    // HTML allows no namespaces of other people's, and this one names nothing that is used.
    return inThePagesColours(svg)
        .replaceFirst(" xmlns:jfreesvg='[^']*'", "")
        .replaceFirst("<svg ", "<svg aria-hidden=\"true\" ");
  }

  /** A picture is long and has many colours: one walk through it exchanges them all. */
  private static String inThePagesColours(String svg) {
    StringBuilder page = new StringBuilder(svg.length());
    int done = 0;
    for (int at = svg.indexOf(COLOUR); at >= 0; at = svg.indexOf(COLOUR, done)) {
      int end = svg.indexOf(')', at) + 1;
      String colour = svg.substring(at, end);
      page.append(svg, done, at).append(PROPERTIES.getOrDefault(colour, colour));
      done = end;
    }
    return page.append(svg, done, svg.length()).toString();
  }

  /** The page's colours as a style sheet declares them. */
  public static String declarations(Palette palette) {
    StringBuilder css = new StringBuilder();
    colours(palette)
        .forEach(
            (name, colour) ->
                css.append(
                    String.format(Locale.ROOT, "%s: #%06x; ", name, colour.getRGB() & 0xFFFFFF)));
    return css.toString();
  }

  /** Every colour of the page by its custom property. */
  public static Map<String, Color> colours(Palette palette) {
    Map<String, Color> colours = new LinkedHashMap<>();
    colours.put("--paper", palette.paper());
    colours.put("--card", palette.card());
    colours.put("--ink", palette.ink());
    colours.put("--quiet", palette.quiet());
    colours.put("--line", palette.line());
    colours.put("--band", palette.band());
    colours.put("--guide", palette.guide());
    colours.put("--ghost", palette.ghost());
    colours.put("--played", palette.played());
    colours.put("--turn", palette.turn());
    for (Mark mark : Mark.values()) {
      colours.put("--" + mark.word() + "-line", mark.lineColour(palette));
      colours.put("--" + mark.word() + "-word", mark.textColour(palette));
    }
    return colours;
  }

  private static Map<String, String> properties() {
    Map<String, String> properties = new LinkedHashMap<>();
    colours(Palette.LIGHT)
        .forEach(
            (name, c) ->
                properties.putIfAbsent(
                    "rgb(" + c.getRed() + "," + c.getGreen() + "," + c.getBlue() + ")",
                    "var(" + name + ")"));
    return properties;
  }

  /** Rounded half to even as its decimals stand; most of a page is such numbers. */
  static String hundredths(double length) {
    double scaled = length * 100;
    double down = Math.floor(scaled);
    if (!(Math.abs(length) < LARGE) || Math.abs(scaled - down - 0.5) < CLEARLY) {
      return BigDecimal.valueOf(length)
          .setScale(2, RoundingMode.HALF_EVEN)
          .stripTrailingZeros()
          .toPlainString();
    }
    long whole = Math.round(scaled);
    long size = Math.abs(whole);
    StringBuilder text = new StringBuilder(12);
    if (whole < 0) {
      text.append('-');
    }
    text.append(size / 100);
    int rest = (int) (size % 100);
    if (rest != 0) {
      text.append('.').append((char) ('0' + rest / 10));
      if (rest % 10 != 0) {
        text.append((char) ('0' + rest % 10));
      }
    }
    return text.toString();
  }
}
