package holdfast.chart;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The characters of an XML file, by the rules of XML 1.0, appendix F: a byte order mark, the bytes
 * of the first {@code <}, or what the file says of itself; else UTF-8. The JDK's parser decodes as
 * well, but prints a line of its own where bytes are broken.
 */
final class XmlText {

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /** The declaration is first in a file, and short. */
  private static final int LONGEST_DECLARATION = 256;

  private static final Pattern ENCODING =
      Pattern.compile("^<\\?xml[^>]*\\sencoding\\s*=\\s*[\"']([A-Za-z][A-Za-z0-9._-]*)[\"']");

  private XmlText() {}

  /** All characters, without the byte order mark. */
  static String of(byte[] xml, String source) {
    CharsetDecoder decoder =
        encoding(xml, source)
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CharBuffer text =
        CharBuffer.allocate((int) Math.ceil(xml.length * (double) decoder.maxCharsPerByte()) + 2);
    CoderResult result = decoder.decode(ByteBuffer.wrap(xml), text, true);
    text.flip();
    if (result.isError()) {
      throw broken(text.toString(), decoder.charset(), source);
    }
    boolean marked = text.hasRemaining() && text.charAt(0) == BYTE_ORDER_MARK;
    return text.toString().substring(marked ? 1 : 0);
  }

  private static ChartException broken(String before, Charset charset, String source) {
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    int column = before.length() - before.lastIndexOf('\n');
    return new ChartException(
        source,
        line,
        column,
        "it is not well-formed XML: no text in " + charset,
        "export it again as MusicXML");
  }

  private static Charset encoding(byte[] xml, String source) {
    int first = xml.length < 2 ? 0 : ((xml[0] & 0xFF) << 8) | (xml[1] & 0xFF);
    return switch (first) {
      case 0xFEFF, 0x003C -> StandardCharsets.UTF_16BE;
      case 0xFFFE, 0x3C00 -> StandardCharsets.UTF_16LE;
      default -> declared(xml, source);
    };
  }

  private static Charset declared(byte[] xml, String source) {
    int length = Math.min(xml.length, LONGEST_DECLARATION);
    Matcher said = ENCODING.matcher(new String(xml, 0, length, StandardCharsets.ISO_8859_1));
    if (!said.find()) {
      return StandardCharsets.UTF_8;
    }
    try {
      return Charset.forName(said.group(1));
    } catch (UnsupportedCharsetException e) {
      throw new ChartException(
          source, "its encoding " + said.group(1) + " is not known", "export it again in UTF-8");
    }
  }
}
