package holdfast.bench.motif;

import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Hindsight;
import holdfast.motif.IdeaCost;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.Player;
import holdfast.motif.Verdict;
import holdfast.phrase.Ending;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseRevision;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
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

/** How long does a verdict take, and how long a ten-minute take with hindsight? */
@State(Scope.Benchmark)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class MotifBenchmark {

  private static final int CASES = 2000;

  /** Ten minutes at 60 beats a minute, a phrase in five beats. */
  private static final int PHRASES = 120;

  private static final double APART = 5;

  private final MotifJudge judge = new MotifJudge();
  private final List<Case> cases =
      new LabelledSet(Performer.KEYBOARD, IdeaMaker.WALK, Known.CHORDS_AND_PLAYER, true)
          .make(CASES, JudgeBench.SEED);
  private final Take take = Take.make();
  private int next;

  /** One verdict, on cases of every treatment in turn; look at p0.99. */
  @Benchmark
  @BenchmarkMode(Mode.SampleTime)
  @OutputTimeUnit(TimeUnit.MICROSECONDS)
  public Verdict verdict() {
    Case c = cases.get(next++ % CASES);
    return judge.compare(c.idea(), c.phrase(), c.context());
  }

  /** Cuts and verdicts of a whole take again, all of it known. */
  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  public Hindsight tenMinutesAgain() {
    IdeaCost cost = new IdeaCost(judge, take.idea, take.notes, take.context);
    List<List<Note>> phrases = new ArrayList<>();
    for (Phrase phrase : PhraseRevision.of(take.phrases, cost).phrases()) {
      phrases.add(take.notes.subList(phrase.firstNote(), phrase.endNote()));
    }
    return Hindsight.read(judge, take.idea, phrases, take.context);
  }

  /** A take in which half of the phrases carry the idea. */
  private record Take(Motif idea, List<Note> notes, List<Phrase> phrases, Context context) {

    static Take make() {
      Random random = new Random(3);
      Context context =
          Context.over(ChartLibrary.open("Lantern Turn").changes(), Player.KEYBOARD, 4);
      List<Note> notes = new ArrayList<>();
      List<Phrase> phrases = new ArrayList<>();
      Place first = new Place(context.changes().orElseThrow(), 0, 60);
      List<Note> idea = IdeaMaker.WALK.make(first, 5, random);
      for (int p = 0; p < PHRASES; p++) {
        Place place = new Place(first.changes(), APART * p, 60);
        List<Note> written =
            random.nextBoolean() ? idea : IdeaMaker.WALK.make(place, 5 + p % 2, random);
        List<PlayedNote> played = new ArrayList<>();
        int before = notes.size();
        for (Note note : Performer.KEYBOARD.play(written, 60, random)) {
          Note there = new Note(APART * p + note.onsetBeats(), note.durationBeats(), note.pitch());
          notes.add(there);
          // At 60 beats a minute a beat is a second.
          played.add(
              new PlayedNote(
                  there.onsetBeats() + 4, there.durationBeats(), there.pitch(), 0, 0.5, 1));
        }
        phrases.add(new Phrase(played, before, Ending.REST, APART * p + 8));
      }
      return new Take(Motif.over(first.harmony(), idea), List.copyOf(notes), phrases, context);
    }
  }
}
