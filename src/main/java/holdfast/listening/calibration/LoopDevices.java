package holdfast.listening.calibration;

/**
 * A loudspeaker and a microphone that are both running, each with its own count of samples. Nothing
 * here waits but {@link #rest()}.
 */
interface LoopDevices {

  /** Samples per second that are played. */
  int outRate();

  /** Samples per second that are recorded. */
  int inRate();

  /** How many samples can be played without waiting. */
  int room();

  /**
   * Plays samples, no more than there is {@link #room()} for.
   *
   * @param samples full scale ±1; played on all channels
   */
  void play(float[] samples, int count);

  /** How many of the samples that were given to {@link #play} still wait in the device. */
  long waitingToPlay();

  /** How many recorded samples can be read without waiting. */
  int ready();

  /** Reads samples, no more than are {@link #ready()}; says how many. */
  int read(float[] to, int count);

  /** The machine's clock, {@link System#nanoTime()}. */
  long nanoTime();

  /** Lets a millisecond pass. */
  void rest() throws InterruptedException;
}
