package holdfast.listening;

import java.util.ArrayList;
import java.util.Comparator;
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

  /** A whole recording at once: every note told as the events that made it. */
  public static Heard recording(List<PlayedNote> notes) {
    List<PlayEvent> events = new ArrayList<>(2 * notes.size());
    for (PlayedNote n : notes) {
      events.add(
          new PlayEvent.NoteOn(
              n.onsetSeconds(), n.pitch(), n.cents(), n.loudness(), n.confidence()));
      events.add(new PlayEvent.NoteOff(n.endSeconds(), n.pitch()));
    }
    // At the same moment keys go up before others go down.
    events.sort(
        Comparator.comparingDouble(PlayEvent::seconds)
            .thenComparing(event -> event instanceof PlayEvent.NoteOn)
            .thenComparingInt(PlayEvent::pitch));
    return new Heard(events, events.isEmpty() ? 0 : events.get(events.size() - 1).seconds());
  }
}
