package holdfast.practice;

import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import java.util.Optional;
import java.util.function.Consumer;

/** A band whose playback a test gets hold of when it starts. */
public record WatchedBand(BackingPlayer band, Consumer<Playback> started) implements BackingPlayer {

  @Override
  public Playback start(Performance performance, long earliest) {
    Playback playback = band.start(performance, earliest);
    started.accept(playback);
    return playback;
  }

  @Override
  public void setVolume(double volume) {
    band.setVolume(volume);
  }

  @Override
  public String output() {
    return band.output();
  }

  @Override
  public Optional<String> trouble() {
    return band.trouble();
  }

  @Override
  public void close() {
    band.close();
  }
}
