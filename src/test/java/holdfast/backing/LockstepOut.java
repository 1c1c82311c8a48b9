package holdfast.backing;

import holdfast.backing.sound.SoundOut;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.ShortMessage;

/**
 * An output whose time goes forward only when the scheduling thread looks at it: a test of hours
 * takes a moment, and takes the same moments each time however busy the machine is.
 */
final class LockstepOut implements SoundOut {

  /** From made to heard. */
  static final long BUFFER_MICROS = 100_000;

  private static final long STEP_MICROS = 5_000;

  /** A message with its stamp, and how far sound was made when it came. */
  record Sent(long micros, long madeMicros, ShortMessage message) {}

  private final long past = System.nanoTime();
  private final List<Sent> sent = new ArrayList<>();
  private long made;
  private boolean silenced;

  /** The thread is held up: so much sound is made meanwhile. */
  synchronized void stall(long micros) {
    made += micros;
  }

  synchronized List<Sent> sent() {
    return List.copyOf(sent);
  }

  synchronized boolean silenced() {
    return silenced;
  }

  @Override
  public synchronized void send(ShortMessage message, long positionMicros) {
    sent.add(new Sent(positionMicros, made, message));
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
    made += STEP_MICROS;
    return moment(positionMicros + BUFFER_MICROS);
  }

  /** Past when the position is made, else a moment away, so that the scheduler looks again. */
  private long moment(long micros) {
    return micros <= made ? past : System.nanoTime() + 20_000;
  }

  @Override
  public synchronized long microsHeard(long nanoTime) {
    return made - BUFFER_MICROS;
  }

  @Override
  public synchronized void silence(int channel) {
    silenced = true;
  }

  @Override
  public void setVolume(double volume) {
    // Nobody listens.
  }

  @Override
  public String name() {
    return "lockstep";
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
