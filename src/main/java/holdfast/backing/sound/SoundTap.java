package holdfast.backing.sound;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The last seconds of what an output has sent to its device, for whoever must know what the room
 * hears. One thread writes and never waits; any may read, and reads silence where sound is not made
 * yet, or was forgotten.
 */
public final class SoundTap {

  /** Samples that are remembered: 6 s. */
  private static final int ROOM = 1 << 18;

  private final float[] samples = new float[ROOM];
  private final AtomicLong made = new AtomicLong();

  /** Keeps a block of 16-bit little-endian stereo, both channels added up. */
  void write(byte[] block) {
    long at = made.getPlain();
    int frames = block.length / 4;
    for (int i = 0; i < frames; i++) {
      int left = (block[4 * i] & 0xFF) | block[4 * i + 1] << 8;
      int right = (block[4 * i + 2] & 0xFF) | block[4 * i + 3] << 8;
      samples[(int) (at + i) & (ROOM - 1)] = (left + right) / 65536f;
    }
    made.setRelease(at + frames);
  }

  /** Frames that were sent since the output was opened. */
  public long made() {
    return made.getAcquire();
  }

  /** Frames a second. */
  public int rate() {
    return Math.round(StreamSynth.FORMAT.getFrameRate());
  }

  /**
   * Copies frames, full scale 1.
   *
   * @param from the first one, counted from the opening of the output
   */
  public void copy(long from, float[] to, int length) {
    long end = made();
    long oldest = Math.max(0, end - ROOM / 2);
    Arrays.fill(to, 0, length, 0);
    for (long at = Math.max(from, oldest); at < Math.min(from + length, end); at++) {
      to[(int) (at - from)] = samples[(int) at & (ROOM - 1)];
    }
  }
}
