package holdfast.bench;

import holdfast.chart.ChartText;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.util.ArrayList;
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

/** How long does it take to judge a whole chorus of 32 bars, in which 40 phrases are played? */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class TakeBenchmark {

  private static final int PHRASES = 40;
  private static final double BEATS_A_PHRASE = 32 * 4.0 / PHRASES;

  private final Setting setting =
      Setting.of(
          ChartText.parse(
              "title: Thirty-two\nkey: C\ntempo: 60\n\n"
                  + "| Cmaj7 | Am7 | Dm7 | G7 | Em7 | A7 | Abmaj7 | G7 |\n".repeat(4),
              "bench"),
          TempoMap.steady(60),
          Player.KEYBOARD,
          Optional.empty());

  private final List<PlayedNote> played = played();

  /** One chorus, from its notes to its counts. */
  @Benchmark
  public JudgedTake chorus() {
    return Coach.judge(setting, played, phrase -> {});
  }

  private List<PlayedNote> played() {
    List<Note> idea = IdeaNotation.parse("E4/0.5 G4/0.5 A4/0.5 G4/0.75");
    int[] steps = {0, 2, -1, 3, 0, -2, 1};
    List<Note> line = new ArrayList<>();
    for (int p = 0; p < PHRASES; p++) {
      for (Note note : idea) {
        line.add(
            new Note(
                p * BEATS_A_PHRASE + note.onsetBeats(),
                note.durationBeats(),
                note.pitch() + steps[p % steps.length]));
      }
    }
    return new DemoStudent(1).play(line, setting.beats());
  }
}
