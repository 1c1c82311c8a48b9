package holdfast.chart;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.function.Consumer;

/** Reads a chart from a file, whatever of the known formats it is in. */
final class ChartFile {

  /** No chart, compressed or not, is longer, in bytes: what is longer is not read into memory. */
  private static final int LONGEST_FILE = 8 << 20;

  private ChartFile() {}

  static Chart read(Path file, Consumer<String> notes) {
    String source = file.toString();
    byte[] bytes = bytes(file, source);
    if (MusicXmlChart.looksLikeOne(bytes)) {
      MusicXmlChart.Reading reading = MusicXmlChart.read(bytes, source);
      reading.notes().forEach(notes);
      return reading.chart();
    }
    return ChartText.parse(text(bytes, source), source);
  }

  private static byte[] bytes(Path file, String source) {
    if (Files.isDirectory(file)) {
      throw new ChartException(source, "it is a folder", "name a chart file in it");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LONGEST_FILE + 1);
      if (bytes.length > LONGEST_FILE) {
        throw new ChartException(
            source, "it is too long for a chart", "give a file of at most 8 megabytes");
      }
      return bytes;
    } catch (NoSuchFileException e) {
      throw new ChartException(source, "there is no such file", "check the name");
    } catch (IOException e) {
      throw new ChartException(
          source, "it cannot be read (" + e.getMessage() + ")", "check that you may read it");
    }
  }

  /** The text of a file in UTF-8, or in UTF-16 where a byte-order mark says so. */
  static String text(byte[] bytes, String source) {
    Charset charset = StandardCharsets.UTF_8;
    if (bytes.length >= 2) {
      int mark = (bytes[0] & 0xFF) << 8 | (bytes[1] & 0xFF);
      if (mark == 0xFEFF || mark == 0xFFFE) {
        charset = StandardCharsets.UTF_16;
      }
    }
    try {
      return charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new ChartException(
          source, "it is not text in UTF-8", "save it from your editor as UTF-8");
    }
  }
}
