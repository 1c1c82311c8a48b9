package holdfast.practice;

import holdfast.backing.sound.SoundOut;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.midi.ShortMessage;

/** A silent output whose time runs quicker than the clock's, so that a live take is over sooner. */
public final class QuickOut implements SoundOut {

  /** A note that was sent, at its position in microseconds of music. */
  record Sent(long micros, ShortMessage message) {}

  private final int speed;
  private final long opened = System.nanoTime();
  final List<Sent> sent = new CopyOnWriteArrayList<>();

  /** Music seconds for each second of the clock. */
  public QuickOut(int speed) {
    this.speed = speed;
  }

  @Override
  public void send(ShortMessage message, long positionMicros) {
    sent.add(new Sent(positionMicros, message));
  }

  @Override
  public long madeMicros() {
    return microsHeard(System.nanoTime());
  }

  @Override
  public long nanoTimeToSend(long positionMicros) {
    return nanoTimeHeard(positionMicros - SEND_AHEAD_MICROS);
  }

  @Override
  public long nanoTimeHeard(long positionMicros) {
    return opened + positionMicros * 1000 / speed;
  }

  @Override
  public long microsHeard(long nanoTime) {
    return Math.floorDiv((nanoTime - opened) * speed, 1000L);
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
    return "quick and silent";
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
