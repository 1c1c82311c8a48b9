package holdfast.bench.phrase;

import holdfast.phrase.MadeTake;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseCutter;
import holdfast.phrase.PhraseRevision;
import holdfast.phrase.Revision;
import holdfast.phrase.RhythmCost;
import holdfast.phrase.SoloMaker;
import holdfast.phrase.TakeMaker;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;
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

/** One take of some twenty phrases: cut live without and with the idea, and revised. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PhraseCutterBenchmark {

  private final MadeTake take =
      new TakeMaker(TakeMaker.Ear.MICROPHONE, 0.1, 0.1, 0.1).make(SoloMaker.HOLD_OUT);
  private final TempoMap tempo = TempoMap.steady(take.beatsPerMinute());
  private final List<Phrase> live = PhraseCutter.cut(take.notes(), tempo, Optional.of(take.idea()));

  @Benchmark
  public List<Phrase> cutWithoutAnIdea() {
    return PhraseCutter.cut(take.notes(), tempo, Optional.empty());
  }

  @Benchmark
  public List<Phrase> cutWithTheIdea() {
    return PhraseCutter.cut(take.notes(), tempo, Optional.of(take.idea()));
  }

  @Benchmark
  public Revision revise() {
    return PhraseRevision.of(live, new RhythmCost(take.notes(), tempo, take.idea()));
  }
}
