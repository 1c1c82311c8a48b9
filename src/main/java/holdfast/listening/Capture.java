package holdfast.listening;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;

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

  /**
   * The pitch of a note that has begun and is not told yet, in cents (A4 = 6900): for showing that
   * something is heard, and nothing else.
   */
  default OptionalDouble sounding() {
    return OptionalDouble.empty();
  }

  /** What the player should know, a sentence each; each is given once. */
  default List<String> news() {
    return List.of();
  }

  /** The take is over: what is still open, ended now. To be asked once, before closing. */
  default Heard rest() {
    return new Heard(List.of(), Double.NEGATIVE_INFINITY);
  }

  /** Events that came faster than they were fetched and had to be let go; told in the report. */
  long lost();

  @Override
  void close();
}
