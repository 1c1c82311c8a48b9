package holdfast.listening.keyboard;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import javax.sound.midi.ShortMessage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to one keyboard. When the cable is pulled the ear waits, ends the notes that were held,
 * and goes on by itself as soon as the device is back; nothing that was played is lost.
 */
final class KeyboardCapture implements Capture {

  /** Room for a minute of a thousand messages a second. */
  private static final int QUEUE = 1 << 16;

  /** How often to look whether the cable is still in. */
  private static final long LOOK_EVERY_NANOS = 500_000_000L;

  private static final Logger LOG = LoggerFactory.getLogger(KeyboardCapture.class);

  private final Cable cable;
  private final TakeClock clock;
  private final EventRing ring = new EventRing(QUEUE);
  private final boolean[] held = new boolean[128];
  private StampingReceiver receiver = new StampingReceiver(ring);
  private boolean listening;
  private long lookAgainNanos;
  private double latestSeconds = Double.NEGATIVE_INFINITY;

  KeyboardCapture(Cable cable, TakeClock clock) {
    this.cable = cable;
    this.clock = clock;
    this.lookAgainNanos = System.nanoTime() + LOOK_EVERY_NANOS;
    connect();
  }

  @Override
  public Heard await(Duration atMost) throws InterruptedException {
    receiver.wake(Thread.currentThread());
    long until = System.nanoTime() + atMost.toNanos();
    // Taken before the queue is emptied: whatever was stamped earlier is in the queue by now or
    // comes out of it below.
    long mark = System.nanoTime();
    while (ring.isEmpty() && mark < until) {
      LockSupport.parkNanos(this, until - mark);
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
      mark = System.nanoTime();
    }
    List<PlayEvent> events = new ArrayList<>();
    ring.drain((nanos, status, key, velocity) -> hear(events, nanos, status, key, velocity));
    lookAfterTheCable(events);
    return new Heard(events, seconds(mark));
  }

  @Override
  public boolean isListening() {
    return listening;
  }

  @Override
  public long lost() {
    return ring.lost();
  }

  @Override
  public void close() {
    receiver.close();
    cable.disconnect();
    listening = false;
  }

  private void hear(List<PlayEvent> events, long nanos, int status, int key, int velocity) {
    // MIDI 1.0: a note-on of velocity 0 is a note-off.
    if ((status & 0xF0) == ShortMessage.NOTE_ON && velocity > 0) {
      held[key] = true;
      events.add(PlayEvent.NoteOn.key(seconds(nanos), key, velocity));
    } else {
      held[key] = false;
      events.add(new PlayEvent.NoteOff(seconds(nanos), key));
    }
  }

  private void lookAfterTheCable(List<PlayEvent> events) {
    long now = System.nanoTime();
    if (now < lookAgainNanos) {
      return;
    }
    lookAgainNanos = now + LOOK_EVERY_NANOS;
    boolean plugged = cable.isPlugged();
    if (listening && (!plugged || !cable.isConnected())) {
      LOG.info("{} went away", cable.name());
      close();
      for (int key = 0; key < held.length; key++) {
        if (held[key]) {
          events.add(new PlayEvent.NoteOff(seconds(now), key));
        }
      }
      Arrays.fill(held, false);
    }
    if (!listening && plugged) {
      connect();
      if (listening) {
        LOG.info("{} is back", cable.name());
      }
    }
  }

  private void connect() {
    receiver = new StampingReceiver(ring);
    listening = cable.connect(receiver);
  }

  private double seconds(long nanos) {
    // A clock that is fitted to the sound device may step back by a hair; a take never does.
    latestSeconds = Math.max(latestSeconds, clock.secondsAt(nanos));
    return latestSeconds;
  }
}
