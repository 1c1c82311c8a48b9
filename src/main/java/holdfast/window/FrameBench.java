package holdfast.window;

import holdfast.session.DemoTake;
import holdfast.window.play.FrameTimes;
import holdfast.window.play.PlayPage;
import holdfast.window.play.TakeRequest;
import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import javax.swing.SwingUtilities;

/** Plays the demo in a real window and measures its frames, and what the event thread costs. */
public final class FrameBench {

  private static final long WARM_UP_MILLIS = 6_000;

  private FrameBench() {}

  /**
   * Measures.
   *
   * @param seconds how long, after a warm-up of six
   */
  public static void run(int seconds, PrintWriter out) throws InterruptedException, IOException {
    Path folder = Files.createTempDirectory("holdfast-frames");
    MainWindow window = MainWindow.open(folder);
    SwingUtilities.invokeLater(
        () ->
            window
                .desk()
                .play(
                    TakeRequest.of(
                        DemoTake.shipped().chart(), DemoTake.CHORUSES, TakeRequest.Who.DEMO)));
    Thread.sleep(WARM_UP_MILLIS);
    Optional<PlayPage> page = window.desk().playing();
    if (page.isEmpty()) {
      out.println("no take runs, so there are no frames to measure");
      return;
    }
    FrameTimes times = page.get().frameTimes();
    times.forget();
    long cpu = eventThreadNanos();
    long start = System.nanoTime();
    Thread.sleep(1000L * seconds);
    double busy = (double) (eventThreadNanos() - cpu) / (System.nanoTime() - start);
    out.printf(
        Locale.ROOT,
        "%d frames in %d s; a frame takes %.2f ms in the middle, %.2f ms at the 99th in a hundred,"
            + " %.2f ms at the longest (its own work: %.2f, %.2f and %.2f ms); the event thread uses %.1f %% of one core%n",
        times.count(),
        seconds,
        times.millis(0.5),
        times.millis(0.99),
        times.millis(1),
        times.cpuMillis(0.5),
        times.cpuMillis(0.99),
        times.cpuMillis(1),
        100 * busy);
    out.flush();
    SwingUtilities.invokeLater(window::close);
  }

  private static long eventThreadNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
        .filter(info -> info != null && info.getThreadName().startsWith("AWT-EventQueue"))
        .map(ThreadInfo::getThreadId)
        .mapToLong(threads::getThreadCpuTime)
        .sum();
  }
}
