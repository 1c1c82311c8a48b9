package holdfast.chart;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * The zip form of MusicXML: {@code META-INF/container.xml} names the score among the other files.
 * What unpacks to more than a score can be is not unpacked to its end.
 */
final class CompressedMusicXml {

  /** More than the largest score needs, in bytes; a zip bomb goes no further. */
  private static final int LONGEST_UNPACKED = 32 << 20;

  /** A score comes with pictures and sounds, but not with this many files. */
  private static final int MOST_FILES = 1000;

  private static final String CONTAINER = "META-INF/container.xml";
  private static final String SCORE = "score.musicxml";
  private static final String MIME_TYPE = "application/vnd.recordare.musicxml";

  private CompressedMusicXml() {}

  static boolean looksLikeOne(byte[] file) {
    return file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] == 3 && file[3] == 4;
  }

  /** The score inside. */
  static byte[] score(byte[] zip, String source) {
    Map<String, byte[]> files = unpack(zip, source);
    byte[] container = files.get(CONTAINER);
    if (container == null) {
      throw new ChartException(
          source, "it is a zip file without " + CONTAINER, "export it again as MusicXML (.mxl)");
    }
    String path =
        scorePath(container, source)
            .orElseThrow(
                () ->
                    new ChartException(
                        source, CONTAINER + " names no score", "export it again as MusicXML"));
    byte[] score = files.get(path);
    if (score == null) {
      throw new ChartException(
          source, "the score " + path + " is missing from it", "export it again as MusicXML");
    }
    return score;
  }

  private static Optional<String> scorePath(byte[] container, String source) {
    try (MusicXmlInput input = new MusicXmlInput(container, source)) {
      input.enterRoot();
      while (input.nextInside()) {
        Optional<String> path =
            input.take().first("rootfile").flatMap(file -> file.attribute("full-path"));
        if (path.isPresent()) {
          return path;
        }
      }
      return Optional.empty();
    }
  }

  private static Map<String, byte[]> unpack(byte[] zip, String source) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    int left = LONGEST_UNPACKED;
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        byte[] bytes = in.readNBytes(left + 1);
        left -= bytes.length;
        if (left < 0 || files.size() >= MOST_FILES) {
          throw new ChartException(
              source, "it unpacks to more than a score can be", "export it again as MusicXML");
        }
        files.put(entry.getName(), bytes);
      }
    } catch (IOException | IllegalArgumentException e) {
      // Broken compression, or names that are not text.
      throw new ChartException(
          source, "its zip is damaged", "copy it again, or export it as plain MusicXML");
    }
    return files;
  }

  static void write(byte[] xml, OutputStream out) throws IOException {
    String container =
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <container>
          <rootfiles>
            <rootfile full-path="%s" media-type="%s+xml"/>
          </rootfiles>
        </container>
        """
            .formatted(SCORE, MIME_TYPE);
    ZipOutputStream zip = new ZipOutputStream(out);
    // The type comes first and unpacked, so that it can be read without unpacking.
    byte[] type = MIME_TYPE.getBytes(StandardCharsets.US_ASCII);
    CRC32 check = new CRC32();
    check.update(type);
    ZipEntry first = entry("mimetype");
    first.setMethod(ZipEntry.STORED);
    first.setSize(type.length);
    first.setCrc(check.getValue());
    put(zip, first, type);
    put(zip, entry(CONTAINER), container.getBytes(StandardCharsets.UTF_8));
    put(zip, entry(SCORE), xml);
    zip.finish();
  }

  private static ZipEntry entry(String name) {
    ZipEntry entry = new ZipEntry(name);
    // The same chart gives the same file, whenever it is written; zip counts time from 1980.
    entry.setTimeLocal(java.time.LocalDateTime.of(1980, 1, 1, 0, 0));
    return entry;
  }

  private static void put(ZipOutputStream zip, ZipEntry entry, byte[] bytes) throws IOException {
    zip.putNextEntry(entry);
    zip.write(bytes);
    zip.closeEntry();
  }
}
