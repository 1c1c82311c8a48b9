package holdfast.session;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * The demo student at a keyboard: her notes arrive as the seconds of the take come round, as they
 * would from a cable.
 *
 * @param name what she is called
 * @param played what she plays, in seconds of the take
 */
public record DemoPlayer(String name, List<PlayedNote> played) implements NoteSource {

  private static final Duration LOOK = Duration.ofMillis(2);

  /** Copies. */
  public DemoPlayer {
    played = List.copyOf(played);
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
