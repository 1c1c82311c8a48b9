package holdfast.listening.microphone;

import holdfast.listening.PlayEvent;
import holdfast.time.TakeClock;
import java.lang.management.ManagementFactory;
import java.time.Duration;

/** What it costs to listen to a microphone, measured on the real device. */
public final class ListeningCost {

  /** Compiling is over by then, so that what is left is the steady cost. */
  private static final long STEADY_AFTER_NANOS = 5_000_000_000L;

  private static final Duration TICK = Duration.ofMillis(5);

  private ListeningCost() {}

  /**
   * What was measured, once all was steady.
   *
   * @param seconds how long
   * @param cpu of one core, of the thread that listens and the thread that reads the device
   * @param allocatedBytes what the thread that reads the device has allocated meanwhile
   * @param notes notes that were heard
   */
  public record Measured(double seconds, double cpu, long allocatedBytes, int notes) {}

  /**
   * Listens on this thread.
   *
   * @param seconds how long, after the first five
   */
  public static Measured measure(Microphone microphone, double seconds)
      throws InterruptedException {
    try (MicrophoneCapture ear = microphone.open(TakeClock.from(System.nanoTime()))) {
      long device = ear.deviceThread().orElseThrow().getId();
      listen(ear, STEADY_AFTER_NANOS);
      long from = System.nanoTime();
      long cpu = cpu(device);
      long bytes = allocated(device);
      int notes = listen(ear, Math.round(seconds * 1e9));
      long took = System.nanoTime() - from;
      return new Measured(
          took * 1e-9, (double) (cpu(device) - cpu) / took, allocated(device) - bytes, notes);
    }
  }

  private static int listen(MicrophoneCapture ear, long nanos) throws InterruptedException {
    long until = System.nanoTime() + nanos;
    int notes = 0;
    while (System.nanoTime() < until) {
      for (PlayEvent event : ear.await(TICK).events()) {
        notes += event instanceof PlayEvent.NoteOn ? 1 : 0;
      }
    }
    return notes;
  }

  private static long cpu(long device) {
    java.lang.management.ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    return threads.getCurrentThreadCpuTime() + threads.getThreadCpuTime(device);
  }

  private static long allocated(long device) {
    return ManagementFactory.getThreadMXBean() instanceof com.sun.management.ThreadMXBean own
        ? own.getThreadAllocatedBytes(device)
        : 0;
  }
}
