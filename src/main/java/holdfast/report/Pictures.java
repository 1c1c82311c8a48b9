package holdfast.report;

import static j2html.TagCreator.div;
import static j2html.TagCreator.object;
import static j2html.TagCreator.rawHtml;

import holdfast.melody.Note;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.report.picture.Svg;
import j2html.tags.DomContent;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;

/** How a painter's picture gets onto the page: as SVG, or drawn straight into a PDF. */
interface Pictures {

  /**
   * A picture in its place.
   *
   * @param id unique on the page
   * @param alt what it shows, in words for those who cannot see it
   * @param width in CSS pixels; it shrinks with its place where it must
   * @param painter draws it, with the top left corner at 0
   */
  DomContent of(String id, String alt, double width, double height, Consumer<Graphics2D> painter);

  /** The shape of an idea, by itself. */
  default DomContent idea(String id, String alt, double width, double height, List<Note> notes) {
    Rectangle2D all = new Rectangle2D.Double(0, 0, width, height);
    return div(of(
            id,
            alt,
            width,
            height,
            g -> ShapePainter.paint(g, all, List.of(), notes, Mark.CARRIED)))
        .withClass("shape");
  }

  /** Inside the page, in the page's colours. */
  static Pictures inThePage() {
    return (id, alt, width, height, painter) ->
        div(rawHtml(Svg.of(id, width, height, painter)))
            .withClass("picture")
            .attr("role", "img")
            .attr("aria-label", alt)
            .withStyle(String.format(Locale.ROOT, "max-width: %.0fpx", width));
  }

  /** On paper: places that the PDF fills when it is made. */
  final class OnPaper implements Pictures {
    /** The kind of object that the PDF hands to us. */
    static final String TYPE = "holdfast/picture";

    private final Map<String, Sized> painters = new HashMap<>();

    /** A painter and the size it was made for. */
    record Sized(double width, double height, Consumer<Graphics2D> painter) {}

    @Override
    public DomContent of(
        String id, String alt, double width, double height, Consumer<Graphics2D> painter) {
      painters.put(id, new Sized(width, height, painter));
      return div(object()
              .attr("type", TYPE)
              .withData(id)
              .attr("title", alt)
              .withStyle(
                  String.format(
                      Locale.ROOT, "display: block; width: %.1fpx; height: %.1fpx", width, height)))
          .withClass("picture");
    }

    Sized named(String id) {
      return painters.get(id);
    }
  }
}
