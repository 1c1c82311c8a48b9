package holdfast.chart;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Charts as MusicXML 4.0, the open standard by which notation programs exchange scores: chord
 * symbols in {@code harmony} elements, with repeats, endings, key, metre and tempo.
 *
 * <p>Source of every element and rule: musicxml.xsd, W3C Music Notation Community Group, MusicXML
 * 4.0, 2021.
 */
public final class MusicXmlChart {

  /**
   * A chart from another program, and what could not be taken over as it was.
   *
   * @param chart the chart
   * @param notes sentences for the user, one for each thing that was left out or read as its
   *     nearest
   */
  public record Reading(Chart chart, List<String> notes) {

    /** Copies the notes. */
    public Reading {
      notes = List.copyOf(notes);
    }
  }

  private MusicXmlChart() {}

  /** Whether the first bytes of a file look like MusicXML, plain or compressed. */
  public static boolean looksLikeOne(byte[] file) {
    if (CompressedMusicXml.looksLikeOne(file)) {
      return true;
    }
    for (byte b : file) {
      // A byte-order mark and the zero bytes of UTF-16 may stand before the first sign.
      boolean isMark = b == (byte) 0xEF || b == (byte) 0xBB || b == (byte) 0xBF;
      boolean isWide = b == (byte) 0xFE || b == (byte) 0xFF || b == 0;
      if (!isMark && !isWide && !Character.isWhitespace(b)) {
        return b == '<';
      }
    }
    return false;
  }

  /**
   * Reads a chart from a MusicXML file, plain or compressed.
   *
   * @param file the whole file
   * @param sourceName what to call it in an error
   * @throws ChartException where it holds no chart that can be played
   */
  public static Reading read(byte[] file, String sourceName) {
    byte[] xml =
        CompressedMusicXml.looksLikeOne(file) ? CompressedMusicXml.score(file, sourceName) : file;
    return new MusicXmlReader(xml, sourceName).read();
  }

  /** Writes a chart as it is written, transposed or not; remarks stay behind. */
  public static String write(Chart chart) {
    return new MusicXmlWriter(chart).write();
  }

  /** Writes a chart as compressed MusicXML, the {@code .mxl} of notation programs. */
  public static void writeCompressed(Chart chart, OutputStream out) throws IOException {
    CompressedMusicXml.write(write(chart).getBytes(StandardCharsets.UTF_8), out);
  }
}
