package holdfast.backing.sound;

import java.util.Optional;
import javax.sound.midi.ShortMessage;

/**
 * Where notes are sent to be heard, and the clock they are heard by. All positions are microseconds
 * of sound since the output was opened.
 *
 * <p>Safe for use by several threads.
 */
public interface SoundOut extends AutoCloseable {

  /**
   * So far ahead of being made is a message sent: it outlasts every pause of a thread that was
   * measured, and the stamp makes its onset exact to the sample (measured: 0.01 ms).
   */
  long SEND_AHEAD_MICROS = 150_000;

  /**
   * Sends a message that is to take effect at this position. A position that is already made means
   * as soon as possible.
   */
  void send(ShortMessage message, long positionMicros);

  /** The position up to which sound is already made: nothing before it can be changed. */
  long madeMicros();

  /** The moment by which a message for this position is due to be sent. */
  long nanoTimeToSend(long positionMicros);

  /** The moment at which this position is heard, as far as can be told now. */
  long nanoTimeHeard(long positionMicros);

  /** The position that is heard at this moment. */
  long microsHeard(long nanoTime);

  /** Ends every note of a channel at once, those that were sent ahead included. */
  void silence(int channel);

  /**
   * How loud the whole is.
   *
   * @param volume 0 (silent) to 1 (as loud as the device allows)
   */
  void setVolume(double volume);

  /** Whether anything can be heard at all; an output without a device only keeps time. */
  default boolean isHeard() {
    return true;
  }

  /** The output's name in plain words. */
  String name();

  /** What is sent to the device; empty where nothing is, or where that cannot be known. */
  default Optional<SoundTap> tap() {
    return Optional.empty();
  }

  /** Which sample of {@link #tap} is heard at this moment. */
  default long sampleHeard(long nanoTime) {
    // A message's sound comes out so much later than its position.
    double frames = microsHeard(nanoTime) * 1e-6 * StreamSynth.FORMAT.getFrameRate();
    return Math.round(frames) + StreamSynth.DELAY_FRAMES;
  }

  /** How long the device is taken to need from its buffer to the ear, in seconds. */
  default double latencySeconds() {
    return 0;
  }

  /** What the player should know, in one sentence: no device, no such sound bank, a device lost. */
  Optional<String> trouble();

  /** How often the sound has broken off for a moment, because a buffer ran dry. */
  int gaps();

  @Override
  void close();
}
