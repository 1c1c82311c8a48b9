package holdfast.listening.microphone;

import holdfast.time.ClockFit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Samples between the device's thread and the session's, with the moments at which they came. Of
 * fixed size, made once: writing neither waits nor allocates. When it is full the newest samples
 * are let go and counted; the clock that is fitted to the moments then tells that time has jumped.
 */
final class SoundRing {

  /** Moments that are kept until they are fetched: as many writes of 5 ms as fill four seconds. */
  private static final int STAMPS = 1 << 10;

  private final float[] samples;
  private final int mask;
  private final int rate;
  private final long[] positions = new long[STAMPS];
  private final long[] nanos = new long[STAMPS];
  private final AtomicLong written = new AtomicLong();
  private final AtomicLong read = new AtomicLong();
  private final AtomicLong stamped = new AtomicLong();
  private final AtomicLong stampsRead = new AtomicLong();
  private final AtomicLong lost = new AtomicLong();

  /**
   * A ring.
   *
   * @param capacity samples, rounded up to a power of two
   * @param rate samples per second
   */
  SoundRing(int capacity, int rate) {
    int size = Integer.highestOneBit(Math.max(2, capacity - 1)) << 1;
    samples = new float[size];
    mask = size - 1;
    this.rate = rate;
  }

  /**
   * The device thread's side.
   *
   * @param atNanos when they had come, of {@link System#nanoTime}
   */
  void write(float[] from, int length, long atNanos) {
    long at = written.getPlain();
    int room = (int) Math.min(length, samples.length - (at - read.getAcquire()));
    for (int i = 0; i < room; i++) {
      samples[(int) (at + i) & mask] = from[i];
    }
    if (room < length) {
      lost.setPlain(lost.getPlain() + length - room);
    }
    written.setRelease(at + room);
    long stamp = stamped.getPlain();
    if (room == length && stamp - stampsRead.getAcquire() < STAMPS) {
      positions[(int) stamp & (STAMPS - 1)] = at + room;
      nanos[(int) stamp & (STAMPS - 1)] = atNanos;
      stamped.setRelease(stamp + 1);
    }
  }

  /** The session thread's side: takes up to {@code to.length} samples and says how many. */
  int read(float[] to) {
    long at = read.getPlain();
    int count = (int) Math.min(to.length, written.getAcquire() - at);
    for (int i = 0; i < count; i++) {
      to[i] = samples[(int) (at + i) & mask];
    }
    read.setRelease(at + count);
    return count;
  }

  /** The session thread's side: tells the clock when the samples came. */
  void tell(ClockFit clock) {
    long until = stamped.getAcquire();
    for (long i = stampsRead.getPlain(); i < until; i++) {
      int slot = (int) i & (STAMPS - 1);
      clock.observe(Math.round(positions[slot] * 1e6 / rate), nanos[slot]);
    }
    stampsRead.setRelease(until);
  }

  /** Samples that came in so far. */
  long written() {
    return written.getAcquire();
  }

  /** Samples that had to be let go. */
  long lost() {
    return lost.getPlain();
  }
}
