package holdfast.listening.keyboard;

import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicLongArray;

/**
 * A queue of stamped MIDI messages between one device thread and one session thread. Of fixed size,
 * made once: writing neither waits nor allocates. When it is full, the newest message is let go and
 * counted.
 */
final class EventRing {

  private final AtomicLongArray nanos;
  private final AtomicLongArray messages;
  private final int mask;
  private final AtomicLong written = new AtomicLong();
  private final AtomicLong read = new AtomicLong();
  private final AtomicLong lost = new AtomicLong();

  /** A ring for so many messages, rounded up to a power of two. */
  EventRing(int capacity) {
    int size = Integer.highestOneBit(Math.max(2, capacity - 1)) << 1;
    nanos = new AtomicLongArray(size);
    messages = new AtomicLongArray(size);
    mask = size - 1;
  }

  /** The device thread's side. */
  void offer(long atNanos, int status, int data1, int data2) {
    long at = written.get();
    if (at - read.get() > mask) {
      lost.incrementAndGet();
      return;
    }
    int slot = (int) at & mask;
    nanos.setPlain(slot, atNanos);
    messages.setPlain(slot, status << 16 | data1 << 8 | data2);
    written.setRelease(at + 1);
  }

  /** The session thread's side: hands over all that has arrived, in order. */
  void drain(Taker taker) {
    long until = written.getAcquire();
    for (long at = read.get(); at < until; at++) {
      int slot = (int) at & mask;
      int message = (int) messages.getPlain(slot);
      taker.take(nanos.getPlain(slot), message >> 16, message >> 8 & 0x7F, message & 0x7F);
      read.setRelease(at + 1);
    }
  }

  /** Whether something waits. */
  boolean isEmpty() {
    return written.getAcquire() == read.get();
  }

  long lost() {
    return lost.get();
  }

  /** Takes one message. */
  interface Taker {
    void take(long nanos, int status, int data1, int data2);
  }
}
