package holdfast.command;

import holdfast.book.overview.ClassWork;
import java.io.PrintStream;
import java.util.Locale;

/** How far the work is, on a line of its own that is written over again and again. */
final class ProgressLine {

  private static final int WIDTH = 40;

  /** More often nobody can see it; in nanoseconds. */
  private static final long EVERY_NANOS = 100_000_000L;

  private final PrintStream out;
  private final long startNanos = System.nanoTime();
  private long nextNanos = startNanos;

  ProgressLine(PrintStream out) {
    this.out = out;
  }

  synchronized void show(ClassWork.Step step) {
    boolean isLast = step.done() == step.all();
    if (!isLast && System.nanoTime() < nextNanos) {
      return;
    }
    nextNanos = System.nanoTime() + EVERY_NANOS;
    out.print("\r" + line(step, (System.nanoTime() - startNanos) / 1e9) + (isLast ? "\n" : ""));
    out.flush();
  }

  static String line(ClassWork.Step step, double seconds) {
    int full = (int) ((long) WIDTH * step.done() / Math.max(1, step.all()));
    double left = seconds / Math.max(1, step.done()) * (step.all() - step.done());
    return String.format(
        Locale.ROOT,
        "[%s%s] %d of %d, about %.0f s left   ",
        "#".repeat(full),
        " ".repeat(WIDTH - full),
        step.done(),
        step.all(),
        left);
  }
}
