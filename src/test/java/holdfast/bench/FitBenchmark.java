package holdfast.bench;

import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.harmony.FitJudge;
import holdfast.harmony.JudgedLine;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
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

/** How long does it take to say what each note of a phrase does over its chords? */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class FitBenchmark {

  private final Chart chart = ChartLibrary.open("Porch Light");
  private final Changes changes =
      new Changes(chart.form().changes(), chart.form().lengthBeats(), chart.key());
  private final List<Note> phrase = line(5);
  private final List<Note> chorus = line(120);

  /** Five notes. */
  @Benchmark
  public JudgedLine phrase() {
    return FitJudge.judge(phrase, changes);
  }

  /** A hundred and twenty notes over a whole form. */
  @Benchmark
  public JudgedLine chorus() {
    return FitJudge.judge(chorus, changes);
  }

  private static List<Note> line(int count) {
    int[] steps = {0, 2, 4, 5, 7, 6, 4, 2, 3, 1};
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      notes.add(new Note(i * 0.5, i % 5 == 4 ? 0.3 : 0.45, 60 + steps[i % steps.length] + i % 3));
    }
    return notes;
  }
}
