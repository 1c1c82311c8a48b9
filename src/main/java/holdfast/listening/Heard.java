package holdfast.listening;

import java.util.List;

/**
 * What has arrived since the last look, and a promise: everything that happened before {@code
 * upToSeconds} is in. Rests are measured to that mark and not to the clock on the wall, or a note
 * that arrives late would land in a phrase that is already closed.
 *
 * @param events in order of time
 * @param upToSeconds everything before this second of the take has arrived
 */
public record Heard(List<PlayEvent> events, double upToSeconds) {

  /** Copies the list. */
  public Heard {
    events = List.copyOf(events);
  }
}
