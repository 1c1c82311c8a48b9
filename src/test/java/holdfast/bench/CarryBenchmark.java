package holdfast.bench;

import holdfast.carry.Adaptation;
import holdfast.carry.Carrying;
import holdfast.carry.Habit;
import holdfast.carry.PitchRange;
import holdfast.carry.Question;
import holdfast.carry.Statement;
import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.melody.IdeaNotation;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How long does it take to carry an idea to one chord? */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class CarryBenchmark {

  /** Ideas of four, five and seven notes. */
  @Param({
    "E4 G4 A4 G4",
    "G4/0.5 A4/0.5 C5 A4/0.5 E4/1.5",
    "G4/0.5 | A4/0.5 B4/0.5 C5 A4/0.5 G4/0.5 E4"
  })
  public String idea;

  private Question question;

  /** The bar of the surprise in one of the shipped charts. */
  @Setup
  public void ask() {
    Chart chart = ChartLibrary.open("Porch Light");
    Changes changes = new Changes(chart.form().changes(), chart.form().lengthBeats(), chart.key());
    Statement said = new Statement(IdeaNotation.parse(idea), Optional.of(changes.at(48).harmony()));
    question =
        new Question(said, said, changes, 52, chart.form().metre(), PitchRange.ANY, Habit.UNKNOWN);
  }

  /** One chord. */
  @Benchmark
  public List<Adaptation> choices() {
    return Carrying.choices(question);
  }
}
