package holdfast.backing.sound;

import java.util.Optional;
import javax.sound.midi.ShortMessage;

/**
 * An output that makes no sound but keeps time: for a machine without a sound device, and for
 * whoever mutes everything. Its position is the time since it was opened.
 */
public final class SilentOut implements SoundOut {

  private final long openedNanos = System.nanoTime();
  private final Optional<String> trouble;

  /** Silent for a reason that the player should know, in one sentence. */
  public SilentOut(String reason) {
    this.trouble = Optional.of(reason);
  }

  /** Silent because that was asked for. */
  public SilentOut() {
    this.trouble = Optional.empty();
  }

  @Override
  public void send(ShortMessage message, long positionMicros) {
    // Nobody listens.
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
    return openedNanos + positionMicros * 1000;
  }

  @Override
  public long microsHeard(long nanoTime) {
    return Math.floorDiv(nanoTime - openedNanos, 1000L);
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
  public boolean isHeard() {
    return false;
  }

  @Override
  public String name() {
    return "no sound";
  }

  @Override
  public Optional<String> trouble() {
    return trouble;
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
