package holdfast.backing;

import holdfast.backing.sound.SoundChoice;
import holdfast.backing.sound.SoundOut;
import holdfast.backing.sound.SoundTap;
import java.util.Optional;

/** Plays backings through a sound output. */
public final class SoundPlayer implements BackingPlayer {

  private final SoundOut out;
  private Optional<LivePlayback> running = Optional.empty();

  /** Plays through this output, and closes it in the end. */
  public SoundPlayer(SoundOut out) {
    this.out = out;
  }

  /** Opens the output that is asked for; where there is no device, a silent one that keeps time. */
  public static SoundPlayer open(SoundChoice choice) {
    return new SoundPlayer(choice.open());
  }

  @Override
  public synchronized Playback start(Performance performance, long earliest) {
    running.ifPresent(LivePlayback::stop);
    LivePlayback playback = new LivePlayback(out, performance, earliest);
    running = Optional.of(playback);
    playback.start();
    return playback;
  }

  /** The output, for whoever wants to sound something else on the same clock. */
  public SoundOut out() {
    return out;
  }

  /** Whether there is a device to be heard on. */
  public boolean isHeard() {
    return out.isHeard();
  }

  @Override
  public void setVolume(double volume) {
    out.setVolume(volume);
  }

  @Override
  public String output() {
    return out.name();
  }

  @Override
  public Optional<SoundTap> tap() {
    return out.tap();
  }

  @Override
  public long sampleHeard(long nanoTime) {
    return out.sampleHeard(nanoTime);
  }

  @Override
  public double latencySeconds() {
    return out.latencySeconds();
  }

  @Override
  public Optional<String> trouble() {
    return out.trouble();
  }

  @Override
  public synchronized void close() {
    running.ifPresent(LivePlayback::stop);
    out.close();
  }
}
