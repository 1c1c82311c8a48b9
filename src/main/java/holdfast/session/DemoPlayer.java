package holdfast.session;

import holdfast.backing.BackingEvent;
import holdfast.backing.Performance;
import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TakeClock;
import holdfast.time.TempoMap;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * The demo student at a keyboard: her notes arrive as the seconds of the take come round, as they
 * would from a cable, and the same notes sound over the backing.
 *
 * @param name what she is called
 * @param played what she plays, in seconds of the take
 */
public record DemoPlayer(String name, List<PlayedNote> played) implements NoteSource {

  /** MIDI 1.0. */
  private static final int LOUDEST_VELOCITY = 127;

  private static final Duration LOOK = Duration.ofMillis(2);

  /** Copies. */
  public DemoPlayer {
    played = List.copyOf(played);
  }

  /** What she plays over this performance, at its tempo and no longer than it. */
  public static DemoPlayer over(Performance performance) {
    double end = performance.lastBeat().orElse(Double.POSITIVE_INFINITY);
    DemoTake take = DemoTake.over(performance.arrangement()).until(end);
    return new DemoPlayer(
        take.student() + ", our demo student", take.played(performance.tempoMap()));
  }

  /** The performance with her playing to be heard: each note when the coach is told of it. */
  public Performance heardIn(Performance performance) {
    TempoMap tempo = performance.tempoMap();
    List<BackingEvent> line = new ArrayList<>();
    for (PlayedNote note : played) {
      double onset = tempo.beatAt(note.onsetSeconds());
      double length = tempo.beatAt(note.endSeconds()) - onset;
      int velocity = (int) Math.max(1, Math.rint(note.loudness() * LOUDEST_VELOCITY));
      line.add(BackingEvent.ofLine(new Note(onset, length, note.pitch()), velocity));
    }
    return performance.withPlayedLine(line);
  }

  @Override
  public Capture open(TakeClock clock) {
    List<PlayEvent> events = Heard.recording(played).events();
    return new Capture() {
      private int next;
      private double heard = Double.NEGATIVE_INFINITY;

      @Override
      public Heard await(Duration atMost) throws InterruptedException {
        long until = System.nanoTime() + atMost.toNanos();
        List<PlayEvent> arrived = new ArrayList<>();
        while (true) {
          heard = Math.max(heard, clock.secondsAt(System.nanoTime()));
          while (next < events.size() && events.get(next).seconds() <= heard) {
            arrived.add(events.get(next++));
          }
          if (!arrived.isEmpty() || System.nanoTime() >= until) {
            return new Heard(arrived, heard);
          }
          LockSupport.parkNanos(this, Math.min(LOOK.toNanos(), until - System.nanoTime()));
          if (Thread.interrupted()) {
            throw new InterruptedException();
          }
        }
      }

      @Override
      public boolean isListening() {
        return true;
      }

      @Override
      public long lost() {
        return 0;
      }

      @Override
      public void close() {
        next = events.size();
      }
    };
  }
}
