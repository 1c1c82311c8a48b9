package holdfast.session;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;

/**
 * What a long session holds on to: memory that is in use after a collection, threads, and open
 * files, looked at again and again. What is released stays flat; what leaks grows.
 */
public final class Upkeep implements AutoCloseable {

  /**
   * One look.
   *
   * @param seconds since the watch began
   * @param heapBytes in use, right after a full collection
   * @param threads alive
   * @param openFiles open files, pipes and sockets of the process; −1 where the system does not say
   */
  public record Look(double seconds, long heapBytes, int threads, long openFiles) {}

  private final List<Look> looks = new ArrayList<>();
  private final AtomicBoolean enough = new AtomicBoolean();
  private final long start = System.nanoTime();
  private final Thread watcher;

  private Upkeep(Duration every) {
    watcher = new Thread(() -> watch(every.toNanos()), "upkeep");
    watcher.setDaemon(true);
  }

  /** Looks now and then until it is closed. */
  public static Upkeep watch(Duration every) {
    Upkeep upkeep = new Upkeep(every);
    upkeep.watcher.start();
    return upkeep;
  }

  private void watch(long everyNanos) {
    long next = start + everyNanos;
    while (!enough.get()) {
      LockSupport.parkNanos(this, next - System.nanoTime());
      if (System.nanoTime() >= next) {
        look();
        next += everyNanos;
      }
    }
  }

  /** One look at this moment. */
  public Look look() {
    System.gc();
    long files =
        ManagementFactory.getOperatingSystemMXBean()
                instanceof com.sun.management.UnixOperatingSystemMXBean unix
            ? unix.getOpenFileDescriptorCount()
            : -1;
    Look look =
        new Look(
            (System.nanoTime() - start) / 1e9,
            ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed(),
            ManagementFactory.getThreadMXBean().getThreadCount(),
            files);
    synchronized (looks) {
      looks.add(look);
    }
    return look;
  }

  /** All looks so far, in order. */
  public List<Look> looks() {
    synchronized (looks) {
      return List.copyOf(looks);
    }
  }

  @Override
  public void close() {
    enough.set(true);
    LockSupport.unpark(watcher);
  }
}
