package holdfast.report;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.RenderingContext;
import com.openhtmltopdf.util.XRLog;
import holdfast.report.Pictures.OnPaper;
import holdfast.report.picture.Palette;
import holdfast.report.picture.Svg;
import holdfast.session.JudgedTake;
import j2html.Config;
import j2html.rendering.FlatHtml;
import java.awt.Color;
import java.awt.Shape;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.w3c.dom.Element;

/**
 * The report on paper: the same page as a PDF of A4 pages, its pictures as vectors, tagged so that
 * it can be read aloud (PDF/UA). A take of an ordinary session stands on two pages; what only a
 * screen can do (listening, the long table of phrases) is left to the page.
 */
public final class ReportPdf {

  private static final String FAMILY = "DejaVu Sans";

  /** Families of other fonts are numbered. */
  private static final String OTHER = "Other";

  /** Stands where no font has a sign: U+FFFD, as Unicode has it for that. */
  private static final String NO_SUCH_SIGN = "\uFFFD";

  private ReportPdf() {}

  /** The PDF as bytes. */
  public static byte[] of(JudgedTake take, Occasion occasion) {
    return of(take, occasion, SystemFonts::installed);
  }

  /** The same with these fonts at hand for signs that ours has not. */
  static byte[] of(JudgedTake take, Occasion occasion, Supplier<List<URI>> installed) {
    OnPaper pictures = new OnPaper();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      StringBuilder html = new StringBuilder("<!DOCTYPE html>");
      ReportPage.page(take, occasion, pictures, css(FAMILY))
          .render(FlatHtml.into(html, Config.defaults().withEmptyTagsClosed(true)));
      // Its remarks on CSS that only screens need are for nobody.
      XRLog.setLoggingEnabled(false);
      String xml = escapedForXml(html.toString());
      List<byte[]> others = others(xml, installed);
      StringBuilder families = new StringBuilder(FAMILY);
      PdfRendererBuilder builder = new PdfRendererBuilder();
      for (int i = 0; i < others.size(); i++) {
        families.append("', '").append(OTHER).append(i);
        byte[] font = others.get(i);
        builder.useFont(
            () -> new ByteArrayInputStream(font), OTHER + i, 400, FontStyle.NORMAL, true);
      }
      builder
          .withHtmlContent(xml.replace(css(FAMILY), css(families.toString())), null)
          .useFont(() -> font("DejaVuSans.ttf"), FAMILY, 400, FontStyle.NORMAL, true)
          .useFont(() -> font("DejaVuSans-Bold.ttf"), FAMILY, 700, FontStyle.NORMAL, true)
          .useObjectDrawerFactory(new Drawers(pictures))
          .usePdfUaAccessibility(true)
          .useReplacementText(NO_SUCH_SIGN)
          .withProducer("Holdfast")
          .toStream(out)
          .run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** Fonts of this machine, where the text needs any. */
  private static List<byte[]> others(String text, Supplier<List<URI>> installed)
      throws IOException {
    try (InputStream own = font("DejaVuSans.ttf")) {
      Set<Integer> missing = SystemFonts.missing(text, own);
      return missing.isEmpty() ? List.of() : SystemFonts.having(missing, installed.get());
    }
  }

  /** The page's style with its colours put in, which a PDF cannot look up. */
  private static String css(String families) {
    String css = ReportPage.stylesheet();
    for (Map.Entry<String, Color> colour : Svg.colours(Palette.LIGHT).entrySet()) {
      css =
          css.replace(
              "var(" + colour.getKey() + ")",
              String.format(Locale.ROOT, "#%06x", colour.getValue().getRGB() & 0xFFFFFF));
    }
    int screen = css.indexOf("@media (max-width");
    int print = css.indexOf("@media print");
    String paper =
        "html, code { font-family: '"
            + families
            + "'; }\n"
            + "body { font-size: 8.2pt; line-height: 1.28; }\n"
            + "h1 { font-size: 15pt; } h2 { font-size: 10pt; margin: 6pt 0 1pt; }\n"
            + "header p { margin: 0 0 3pt; }\n"
            + ".told p { font-size: 9.6pt; max-width: none; margin: 1.5pt 0; }\n"
            + "p { margin: 2pt 0; } ol, dl { margin: 2pt 0; } .next li { margin-bottom: 2pt; }\n"
            + "ol { padding-left: 14pt; }\n"
            + ".next p, .judged p, .judged dl { max-width: none; }\n"
            + "th, td { padding: .6pt 4pt; } footer { margin-top: 4pt; font-size: 7.2pt; }\n"
            + "thead { display: table-row-group; }\n"
            + ".why, .word, caption, table.sheet th, table.sheet td { font-size: 7.2pt; }\n"
            + "table.sheet .picture { margin: 0 auto; width: 74px; }\n"
            + "code { font-size: 7.2pt; } .legend { display: inline; margin-right: 8pt; }\n"
            + ".staff { border: 0; padding: 0; display: inline-block; vertical-align: middle; }\n"
            + ".staff .picture { width: auto; }\n"
            + ".pair { display: inline-block; vertical-align: middle; margin: 0 0 0 10pt; }\n"
            + ".idea .shape { display: block; width: 210px; padding: 2pt; }\n"
            + ".idea .beside { display: block; padding: 0; }\n"
            + ".rows .picture { border: 0; margin: 0 0 2pt; page-break-inside: avoid; }\n"
            + "table.counts { margin-right: 14pt; } .multiple { width: 98pt; margin: 0 4pt 2pt 0; }\n"
            + ".multiple p { font-size: 7.2pt; }\n"
            + ".invented .shape { width: 160px; }\n"
            + "tr, li, .multiple, table.counts { page-break-inside: avoid; }\n"
            + "h2 { page-break-after: avoid; }\n"
            + "@page { size: A4; margin: 11mm 13mm; }\n";
    return css.substring(0, screen) + css.substring(print) + paper;
  }

  /** XML 1.0 cannot hold most control characters, wherever they come from. */
  private static String escapedForXml(String html) {
    StringBuilder kept = new StringBuilder(html.length());
    html.codePoints()
        .filter(c -> c == '\t' || c == '\n' || (c >= 0x20 && c != 0xFFFE && c != 0xFFFF))
        .filter(c -> c < 0xD800 || c > 0xDFFF)
        .forEach(kept::appendCodePoint);
    return kept.toString();
  }

  private static InputStream font(String file) {
    return ReportPdf.class.getResourceAsStream("fonts/" + file);
  }

  /** Lets our painters draw into the places that the page keeps for them. */
  private record Drawers(OnPaper pictures) implements FSObjectDrawerFactory {

    @Override
    public boolean isReplacedObject(Element element) {
      return element.getAttribute("type").equals(OnPaper.TYPE);
    }

    @Override
    public FSObjectDrawer createDrawer(Element element) {
      return new Drawer(pictures.named(element.getAttribute("data")));
    }
  }

  private record Drawer(OnPaper.Sized picture) implements FSObjectDrawer {

    @Override
    public Map<Shape, String> drawObject(
        Element element,
        double x,
        double y,
        double width,
        double height,
        OutputDevice device,
        RenderingContext context,
        int dotsPerPixel) {
      double shownWidth = width / dotsPerPixel;
      double shownHeight = height / dotsPerPixel;
      device.drawWithGraphics(
          (float) x,
          (float) y,
          (float) shownWidth,
          (float) shownHeight,
          g -> {
            g.scale(shownWidth / picture.width(), shownHeight / picture.height());
            picture.painter().accept(g);
          });
      return Map.of();
    }
  }
}
