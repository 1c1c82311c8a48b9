package holdfast.listening;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.OperatingSystemMXBean;

/** Tells a machine that starves its sound devices from a fault of ours. */
public final class BusyMachine {

  private BusyMachine() {}

  /**
   * Ends a test that could not hear: as skipped where more programs want to run than there are
   * processors, and as failed where they do not.
   *
   * @param heard whether the sound came whole
   * @param otherwise what was wrong with it
   */
  public static void excuse(boolean heard, String otherwise) {
    OperatingSystemMXBean system = ManagementFactory.getOperatingSystemMXBean();
    double load = system.getSystemLoadAverage();
    int processors = system.getAvailableProcessors();
    String why = otherwise + "; load " + load + " on " + processors + " processors";
    assumeTrue(heard || load <= processors, "skipped: " + why);
    assertTrue(heard, why);
  }
}
