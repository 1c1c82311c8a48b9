package holdfast.backing;

import java.lang.management.ManagementFactory;

/** Keeps one core busy while something else is measured. */
public final class BusyCore implements AutoCloseable {

  private volatile boolean enough;
  private volatile double heat;

  private final Thread thread = new Thread(this::burn, "busy");

  private BusyCore() {}

  /** Starts to keep one core busy, until it is stopped. */
  public static BusyCore start() {
    BusyCore core = new BusyCore();
    core.thread.setDaemon(true);
    core.thread.start();
    return core;
  }

  private void burn() {
    double x = 1;
    while (!enough) {
      x = Math.sqrt(x + 1);
      heat = x;
    }
  }

  /** How much CPU time it has taken, in nanoseconds. */
  public long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getThreadCpuTime(thread.getId());
  }

  /** How far the burning has come; says that it was not left out by the compiler. */
  public double heat() {
    return heat;
  }

  /** Lets it cool down. */
  @Override
  public void close() {
    enough = true;
  }
}
