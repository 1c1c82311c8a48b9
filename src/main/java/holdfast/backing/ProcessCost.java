package holdfast.backing;

import java.lang.management.ManagementFactory;

/** What this program has cost so far, for benches. */
public final class ProcessCost {

  private ProcessCost() {}

  /** CPU time of all threads together, in nanoseconds; 0 where this Java does not tell. */
  public static long cpuNanos() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean own
        ? own.getProcessCpuTime()
        : 0;
  }
}
