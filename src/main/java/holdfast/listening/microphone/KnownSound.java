package holdfast.listening.microphone;

/**
 * What a loudspeaker plays in the player's room, for whoever must take it out of what a microphone
 * hears. Asked by the session's thread.
 */
public interface KnownSound {

  /** Its samples per second. */
  int rate();

  /** The sample, counted from the start of the output, that is heard at this moment. */
  long sampleHeard(long nanoTime);

  /**
   * Copies samples, full scale 1; what is not made yet, or is long past, is silence.
   *
   * @param from the first sample, counted from the start of the output
   */
  void copy(long from, float[] to, int length);
}
