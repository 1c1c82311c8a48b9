package holdfast.practice;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.listening.PlayEvent;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoublePredicate;

/**
 * An ear that passes over what begins while the coach speaks, so that a microphone which hears the
 * coach, or a student who plays along, is not judged for the coach's line.
 *
 * @param source who is listened to
 * @param coachSpeaks whether the coach speaks at this second of the take
 */
record InTurn(NoteSource source, DoublePredicate coachSpeaks) implements NoteSource {

  @Override
  public String name() {
    return source.name();
  }

  @Override
  public Capture open(TakeClock clock) {
    Capture ear = source.open(clock);
    return new Capture() {
      private final Set<Integer> passedOver = new HashSet<>();

      @Override
      public Heard await(Duration atMost) throws InterruptedException {
        Heard heard = ear.await(atMost);
        List<PlayEvent> kept = new ArrayList<>();
        for (PlayEvent event : heard.events()) {
          if (isKept(event)) {
            kept.add(event);
          }
        }
        return new Heard(kept, heard.upToSeconds());
      }

      /** A note that was passed over ends unheard, too. */
      private boolean isKept(PlayEvent event) {
        if (!(event instanceof PlayEvent.NoteOn)) {
          return !passedOver.remove(event.pitch());
        }
        boolean passes = coachSpeaks.test(event.seconds());
        if (passes) {
          passedOver.add(event.pitch());
        } else {
          passedOver.remove(event.pitch());
        }
        return !passes;
      }

      @Override
      public boolean isListening() {
        return ear.isListening();
      }

      @Override
      public long lost() {
        return ear.lost();
      }

      @Override
      public void close() {
        ear.close();
      }
    };
  }
}
