package holdfast.report.picture;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * Outlines of letters and musical signs out of fonts that travel with the program, so that a
 * picture looks the same in a window, on a page and on paper, and on machines without any font.
 *
 * <p>Music: Bravura, the reference font of SMuFL 1.4 (W3C Music Notation Community Group), SIL Open
 * Font License. Words: DejaVu Sans, which has ♭ and ♯ and most alphabets.
 */
final class Glyphs {

  private static final Glyphs MUSIC = new Glyphs("Bravura.otf");
  private static final Glyphs WORDS = new Glyphs("DejaVuSans.ttf");
  private static final Glyphs BOLD = new Glyphs("DejaVuSans-Bold.ttf");

  private final TrueTypeFont font;
  private final CmapLookup names;
  private final double unitsPerEm;
  private final Map<Integer, GeneralPath> outlines = new HashMap<>();

  private Glyphs(String file) {
    try (InputStream in = Glyphs.class.getResourceAsStream("/holdfast/report/fonts/" + file)) {
      if (in == null) {
        throw new IllegalStateException("the font " + file + " is missing from the jar");
      }
      RandomAccessReadBuffer bytes = new RandomAccessReadBuffer(in);
      font = file.endsWith(".otf") ? new OTFParser().parse(bytes) : new TTFParser().parse(bytes);
      names = font.getUnicodeCmapLookup();
      unitsPerEm = font.getUnitsPerEm();
    } catch (IOException e) {
      throw new IllegalStateException("the font " + file + " cannot be read from the jar", e);
    }
  }

  /** Signs of music; an em is four staff spaces. */
  static Glyphs music() {
    return MUSIC;
  }

  /** Letters. */
  static Glyphs words() {
    return WORDS;
  }

  /** Bold letters. */
  static Glyphs bold() {
    return BOLD;
  }

  /** Fills a sign with its origin at the point. */
  void fill(Graphics2D g, int codePoint, double x, double y, double em) {
    g.fill(outline(codePoint, x, y, em));
  }

  /** Fills a line of text that begins at the point, and says where it ends. */
  double fill(Graphics2D g, String text, double x, double y, double em) {
    double at = x;
    for (int codePoint : text.codePoints().toArray()) {
      fill(g, codePoint, at, y, em);
      at += width(codePoint, em);
    }
    return at;
  }

  /** How wide a line of text is. */
  double width(String text, double em) {
    return text.codePoints().mapToDouble(c -> width(c, em)).sum();
  }

  /** How far the next sign stands from this one. */
  double width(int codePoint, double em) {
    try {
      return font.getAdvanceWidth(names.getGlyphId(codePoint)) * em / unitsPerEm;
    } catch (IOException e) {
      throw new IllegalStateException("a font in the jar is broken", e);
    }
  }

  private Shape outline(int codePoint, double x, double y, double em) {
    double scale = em / unitsPerEm;
    AffineTransform place = new AffineTransform(scale, 0, 0, -scale, x, y);
    return place.createTransformedShape(outline(codePoint));
  }

  private synchronized GeneralPath outline(int codePoint) {
    return outlines.computeIfAbsent(codePoint, this::read);
  }

  private GeneralPath read(int codePoint) {
    try {
      int glyph = names.getGlyphId(codePoint);
      return font instanceof org.apache.fontbox.ttf.OpenTypeFont open && open.isPostScript()
          ? open.getCFF().getFont().getType2CharString(glyph).getPath()
          : glyph == 0 ? new GeneralPath() : font.getGlyph().getGlyph(glyph).getPath();
    } catch (IOException e) {
      throw new IllegalStateException("a font in the jar is broken", e);
    }
  }
}
