package holdfast.listening;

import java.time.Duration;

/**
 * An open ear. Device threads behind it only stamp what arrives and queue it; whoever asks gets it
 * in order. The one seam between devices and the rest of the house.
 */
public interface Capture extends AutoCloseable {

  /**
   * Waits at most so long for something new, and gives what there is.
   *
   * @throws InterruptedException when the session is being stopped
   */
  Heard await(Duration atMost) throws InterruptedException;

  /** Whether the device is there at this moment. */
  boolean isListening();

  /** Events that came faster than they were fetched and had to be let go; told in the report. */
  long lost();

  @Override
  void close();
}
