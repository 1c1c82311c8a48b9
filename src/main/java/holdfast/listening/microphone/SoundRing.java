package holdfast.listening.microphone;

import java.util.concurrent.atomic.AtomicLong;

/**
 * Samples between the device's thread and the session's. Of fixed size, made once: writing neither
 * waits nor allocates. When it is full the newest samples are let go and counted.
 */
final class SoundRing {

  private final float[] samples;
  private final int mask;
  private final AtomicLong written = new AtomicLong();
  private final AtomicLong read = new AtomicLong();
  private final AtomicLong lost = new AtomicLong();

  /** A ring for so many samples, rounded up to a power of two. */
  SoundRing(int capacity) {
    int size = Integer.highestOneBit(Math.max(2, capacity - 1)) << 1;
    samples = new float[size];
    mask = size - 1;
  }

  /** The device thread's side. */
  void write(float[] from, int length) {
    long at = written.getPlain();
    int room = (int) Math.min(length, samples.length - (at - read.getAcquire()));
    for (int i = 0; i < room; i++) {
      samples[(int) (at + i) & mask] = from[i];
    }
    if (room < length) {
      lost.addAndGet(length - room);
    }
    written.setRelease(at + room);
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

  /** Samples that had to be let go. */
  long lost() {
    return lost.get();
  }
}
