package holdfast.backing;

import holdfast.backing.sound.SoundTap;
import java.util.Optional;

/** Plays backings, one at a time. A session knows no more of sound than this. */
public interface BackingPlayer extends AutoCloseable {

  /**
   * Starts as soon as the sound device allows, some 300 ms from now. A playback that is still
   * running is stopped.
   */
  default Playback start(Performance performance) {
    return start(performance, Long.MIN_VALUE);
  }

  /**
   * Starts so that the first count is heard at this moment, or as soon after as the device allows.
   *
   * @param earliest a moment of {@link System#nanoTime}; {@link Long#MIN_VALUE} for at once
   */
  Playback start(Performance performance, long earliest);

  /**
   * How loud all is.
   *
   * @param volume 0 to 1
   */
  void setVolume(double volume);

  /** Where it is heard, in plain words. */
  String output();

  /** What it sends to the device; empty where nobody hears it. */
  default Optional<SoundTap> tap() {
    return Optional.empty();
  }

  /** Which sample of {@link #tap} is heard at this moment of {@link System#nanoTime}. */
  default long sampleHeard(long nanoTime) {
    return 0;
  }

  /** How long the device is taken to need from its buffer to the ear, in seconds. */
  default double latencySeconds() {
    return 0;
  }

  /** What the player should know about the sound, in one sentence: it is silent, and why. */
  Optional<String> trouble();

  @Override
  void close();
}
