package holdfast.bench;

import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.report.ReportPdf;
import holdfast.report.Takes;
import holdfast.session.JudgedTake;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long does the report of a take of thirty minutes take? A student waits for it once, so the
 * first time counts: no warming up.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class ReportBenchmark {

  private final JudgedTake take = Takes.long_(30);

  /** The page, without sound. */
  @Benchmark
  public String page() {
    return ReportPage.of(take, Occasion.UNKNOWN);
  }

  /** The same on paper. */
  @Benchmark
  public byte[] paper() {
    return ReportPdf.of(take, Occasion.UNKNOWN);
  }
}
