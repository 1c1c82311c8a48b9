package holdfast.listening.microphone;

import java.util.concurrent.atomic.AtomicLong;
import javax.sound.sampled.AudioFormat;

/**
 * Turns a line's bytes into mono samples: 16 or 24 bits or floats, one channel or the better of
 * two. Buffers are handed in; nothing is allocated.
 */
final class LineReader {

  /** How fast the better channel is chosen anew: the levels are averaged over about a second. */
  private static final double FORGET = 0.99;

  /** The other channel must be this much louder before it is taken: no flutter between two. */
  private static final double CLEARLY = 2;

  /** A sample this near full scale is clipped. */
  private static final float CLIPPED = 0.9998f;

  private final int channels;
  private final int bytes;
  private final boolean bigEndian;
  private final boolean floats;
  private double left;
  private double right;
  private boolean takeRight;
  private final AtomicLong clipped = new AtomicLong();

  LineReader(AudioFormat format) {
    this.channels = format.getChannels();
    this.bytes = format.getSampleSizeInBits() / Byte.SIZE;
    this.bigEndian = format.isBigEndian();
    this.floats = format.getEncoding().equals(AudioFormat.Encoding.PCM_FLOAT);
    if (floats ? bytes != Float.BYTES : bytes != 2 && bytes != 3) {
      throw new IllegalArgumentException("16, 24 or 32 bits are read, not " + format);
    }
  }

  /** Reads whole frames and says how many samples they made. */
  int read(byte[] from, int length, float[] to) {
    int frames = length / (bytes * channels);
    double leftSum = 0;
    double rightSum = 0;
    long atFullScale = 0;
    for (int i = 0; i < frames; i++) {
      float a = sample(from, i * bytes * channels);
      leftSum += a * a;
      float chosen = a;
      if (channels > 1) {
        float b = sample(from, i * bytes * channels + bytes);
        rightSum += b * b;
        chosen = takeRight ? b : a;
      }
      to[i] = chosen;
      atFullScale += Math.abs(chosen) >= CLIPPED ? 1 : 0;
    }
    if (atFullScale > 0) {
      clipped.addAndGet(atFullScale);
    }
    left = FORGET * left + leftSum;
    right = FORGET * right + rightSum;
    takeRight = takeRight ? left <= CLEARLY * right : right > CLEARLY * left;
    return frames;
  }

  private float sample(byte[] from, int at) {
    if (floats) {
      return real(from, at);
    }
    if (bytes == 2) {
      int high = from[bigEndian ? at : at + 1];
      int low = from[bigEndian ? at + 1 : at] & 0xff;
      return (high << 8 | low) / 32768f;
    }
    int high = from[bigEndian ? at : at + 2];
    int low = from[bigEndian ? at + 2 : at] & 0xff;
    return (high << 16 | (from[at + 1] & 0xff) << 8 | low) / 8388608f;
  }

  private float real(byte[] from, int at) {
    int bits = 0;
    for (int i = 0; i < Float.BYTES; i++) {
      bits = (bits << Byte.SIZE) | (from[bigEndian ? at + i : at + Float.BYTES - 1 - i] & 0xff);
    }
    float value = Float.intBitsToFloat(bits);
    // A broken driver's not-a-number must not poison what is counted: it is silence.
    return Float.isFinite(value) ? value : 0;
  }

  /** Samples so far that stood at full scale; may be asked from any thread. */
  long clipped() {
    return clipped.get();
  }
}
