package holdfast.listening.midi;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * Text out of a MIDI file. The standard says ASCII; programs write UTF-8 or Windows' Latin letters,
 * so UTF-8 is tried first.
 */
final class MidiText {

  /** Names and markers are short; a longer text is not one. In characters. */
  static final int LONGEST = 200;

  private static final Charset LATIN = Charset.forName("windows-1252");

  private MidiText() {}

  static String of(byte[] bytes, int from, int length) {
    int used = Math.min(length, 4 * LONGEST);
    ByteBuffer raw = ByteBuffer.wrap(bytes, from, used);
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(raw).toString();
    } catch (CharacterCodingException e) {
      text = new String(bytes, from, used, LATIN);
    }
    return plain(text);
  }

  /** Without control characters (a file must not steer the terminal), trimmed and not too long. */
  static String plain(String text) {
    String clean = text.replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]", " ").strip();
    return clean.codePointCount(0, clean.length()) <= LONGEST
        ? clean
        : clean.substring(0, clean.offsetByCodePoints(0, LONGEST));
  }
}
