package holdfast.report;

import java.util.Optional;

/** What can be heard of a take from its report. */
@FunctionalInterface
public interface Listening {

  /** Nothing can be heard. */
  Listening NOTHING = (from, to) -> Optional.empty();

  /**
   * A stretch of the take as an address that an {@code audio} element plays: the sound itself, or a
   * part of a file beside the page.
   *
   * @param fromSeconds in seconds of the take
   * @param toSeconds in seconds of the take
   */
  Optional<String> address(double fromSeconds, double toSeconds);

  /** This, and what it cannot let hear from another. */
  default Listening orElse(Listening other) {
    return (from, to) -> address(from, to).or(() -> other.address(from, to));
  }
}
