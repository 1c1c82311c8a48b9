package holdfast.practice;

import holdfast.backing.sound.SoundOut;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.midi.ShortMessage;

/**
 * A silent output whose time goes forward a step at a time, when the one who listens asks for it: a
 * live take is the same however busy the machine is, and over sooner.
 */
public class SteppedOut implements SoundOut {

  /** The scheduling thread has seen a step when it has looked at the clock so often since. */
  private static final int LOOKS = 6;

  private static final long LONGEST_WAIT_NANOS = 200_000_000;

  private final long past = System.nanoTime();
  private final List<ShortMessage> sent = new CopyOnWriteArrayList<>();
  private long made;
  private int looks;

  /** Goes forward, and waits until the scheduling thread has seen it. */
  public synchronized void step(long micros) throws InterruptedException {
    made += micros;
    looks = 0;
    long until = System.nanoTime() + LONGEST_WAIT_NANOS;
    while (looks < LOOKS && System.nanoTime() < until) {
      wait(1);
    }
  }

  /** The device's count is suddenly another by so much, ahead or back. */
  public synchronized void leap(long micros) {
    made += micros;
  }

  /** What was sent, in order. */
  public List<ShortMessage> sent() {
    return sent;
  }

  @Override
  public void send(ShortMessage message, long positionMicros) {
    sent.add(message);
  }

  @Override
  public synchronized long madeMicros() {
    return made;
  }

  @Override
  public synchronized long nanoTimeToSend(long positionMicros) {
    return moment(positionMicros - SEND_AHEAD_MICROS);
  }

  @Override
  public synchronized long nanoTimeHeard(long positionMicros) {
    return moment(positionMicros);
  }

  private long moment(long micros) {
    looks++;
    notifyAll();
    return micros <= made ? past : System.nanoTime() + 20_000;
  }

  @Override
  public synchronized long microsHeard(long nanoTime) {
    return made;
  }

  @Override
  public void silence(int channel) {
    // It is silent.
  }

  @Override
  public void setVolume(double volume) {
    // Silence has one volume.
  }

  @Override
  public String name() {
    return "stepped and silent";
  }

  @Override
  public Optional<String> trouble() {
    return Optional.empty();
  }

  @Override
  public int gaps() {
    return 0;
  }

  @Override
  public void close() {
    // Nothing is held.
  }
}
