package holdfast.report;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OS2WindowsMetricsTable;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.fontbox.util.autodetect.FontFileFinder;
import org.apache.pdfbox.io.RandomAccessRead;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Fonts of this machine for signs that our own font has not, such as a student's name in Chinese.
 * Only TrueType outlines can be put into a PDF in part, so other fonts are passed over.
 */
final class SystemFonts {

  private static final Logger LOG = LoggerFactory.getLogger(SystemFonts.class);

  /** Looking into more fonts than these takes longer than anybody waits for a sheet of paper. */
  private static final int MOST_FONTS = 600;

  /** OpenType 1.9, table OS/2, fsType: may not be embedded, not in part, or only as a bitmap. */
  private static final int RESTRICTED = 0x0002;

  private static final int USAGE = 0x000F;
  private static final int NO_PARTS = 0x0100;
  private static final int BITMAPS_ONLY = 0x0200;

  private SystemFonts() {}

  /** The fonts that are installed. */
  static List<URI> installed() {
    return new FontFileFinder().find();
  }

  /** The signs of a text that a font has not; blanks and controls are not looked for. */
  static Set<Integer> missing(String text, InputStream font) {
    Set<Integer> missing = new TreeSet<>();
    try (TrueTypeFont own = new TTFParser().parse(new RandomAccessReadBuffer(font))) {
      CmapLookup names = own.getUnicodeCmapLookup();
      text.codePoints()
          .filter(c -> !Character.isWhitespace(c) && !Character.isISOControl(c))
          .filter(c -> Character.getType(c) != Character.FORMAT)
          .filter(c -> names.getGlyphId(c) == 0)
          .forEach(missing::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return missing;
  }

  /** The first fonts that together have as many of the signs as there are, each as a file. */
  static List<byte[]> having(Set<Integer> signs, List<URI> fonts) {
    List<byte[]> found = new ArrayList<>();
    Set<Integer> left = new TreeSet<>(signs);
    for (URI font : fonts.subList(0, Math.min(MOST_FONTS, fonts.size()))) {
      if (left.isEmpty()) {
        break;
      }
      String name = font.getPath().toLowerCase(Locale.ROOT);
      try {
        if (name.endsWith(".ttf")) {
          take(new File(font), left, found);
        } else if (name.endsWith(".ttc")) {
          takeOfCollection(new File(font), left, found);
        }
      } catch (IOException | RuntimeException broken) {
        // Somebody else's file, and only one of many.
        LOG.debug("the font {} cannot be read", font, broken);
      }
    }
    return found;
  }

  private static void take(File file, Set<Integer> left, List<byte[]> found) throws IOException {
    if (left.removeAll(held(new RandomAccessReadBufferedFile(file), left))) {
      found.add(Files.readAllBytes(file.toPath()));
    }
  }

  private static void takeOfCollection(File file, Set<Integer> left, List<byte[]> found)
      throws IOException {
    try (RandomAccessFile collection = new RandomAccessFile(file, "r")) {
      for (long directory : FontCollection.directories(collection)) {
        byte[] font = FontCollection.font(collection, directory);
        if (left.removeAll(held(new RandomAccessReadBuffer(font), left))) {
          found.add(font);
        }
      }
    }
  }

  private static Set<Integer> held(RandomAccessRead file, Set<Integer> signs) throws IOException {
    Set<Integer> held = new TreeSet<>();
    try (TrueTypeFont font = new TTFParser().parse(file)) {
      if (font.getTableMap().containsKey("glyf") && mayBeEmbedded(font)) {
        CmapLookup names = font.getUnicodeCmapLookup();
        signs.stream().filter(sign -> names.getGlyphId(sign) != 0).forEach(held::add);
      }
    }
    return held;
  }

  private static boolean mayBeEmbedded(TrueTypeFont font) throws IOException {
    OS2WindowsMetricsTable metrics = font.getOS2Windows();
    int type = metrics == null ? 0 : metrics.getFsType();
    return (type & USAGE) != RESTRICTED && (type & (NO_PARTS | BITMAPS_ONLY)) == 0;
  }
}
