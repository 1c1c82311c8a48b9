package holdfast.listening.audio;

import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * A file that ends for good. Some decoders ask a file that was cut short again and again for what
 * it does not hold; here they are told so after a while, instead of asking for ever.
 */
final class EndingStream extends FilterInputStream {

  /** A decoder that flushes its last frames may ask a few times; none needs as many as this. */
  private static final int MOST_QUESTIONS = 1_000;

  private int askedInVain;

  EndingStream(InputStream in) {
    super(in);
  }

  @Override
  public int read() throws IOException {
    return count(super.read(), -1);
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    return length == 0 ? 0 : count(super.read(bytes, from, length), -1);
  }

  @Override
  public long skip(long bytes) throws IOException {
    return bytes <= 0 ? 0 : count(super.skip(bytes), 0);
  }

  private <T extends Number> T count(T got, long nothing) throws EOFException {
    if (got.longValue() == nothing && ++askedInVain > MOST_QUESTIONS) {
      throw new EOFException("it breaks off before its end");
    }
    return got;
  }
}
