package holdfast.listening;

import holdfast.listening.PlayEvent.NoteOn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Puts beginnings and ends together to notes. */
public final class PlayedNotes {

  /** A key cannot be let go sooner; in seconds. */
  private static final double SHORTEST_SECONDS = 0.001;

  private final NoteOn[] sounding = new NoteOn[128];
  private final LateOffs lateOffs = new LateOffs();
  private final List<PlayedNote> notes = new ArrayList<>();

  private PlayedNotes() {}

  /**
   * The notes of these events, in order of onset. A key that is struck again ends its earlier note;
   * what sounds at the end ends there.
   *
   * @param events in order of time
   * @param endSeconds when listening stopped
   */
  public static List<PlayedNote> of(List<PlayEvent> events, double endSeconds) {
    PlayedNotes notes = new PlayedNotes();
    for (PlayEvent event : events) {
      if (event instanceof NoteOn on) {
        notes.begin(on);
      } else {
        notes.end(event);
      }
    }
    for (NoteOn on : notes.sounding) {
      if (on != null) {
        notes.add(on, endSeconds);
      }
    }
    notes.notes.sort(Comparator.comparingDouble(PlayedNote::onsetSeconds));
    return List.copyOf(notes.notes);
  }

  private void begin(NoteOn on) {
    int pitch = on.pitch();
    if (sounding[pitch] != null) {
      lateOffs.struckAgain(pitch);
      add(sounding[pitch], on.seconds());
    }
    sounding[pitch] = on;
  }

  private void end(PlayEvent off) {
    NoteOn on = sounding[off.pitch()];
    if (on != null && !lateOffs.isLate(off.pitch(), off.seconds() - on.seconds())) {
      sounding[off.pitch()] = null;
      add(on, off.seconds());
    }
  }

  private void add(NoteOn on, double end) {
    notes.add(
        new PlayedNote(
            on.seconds(),
            Math.max(end - on.seconds(), SHORTEST_SECONDS),
            on.pitch(),
            on.cents(),
            on.loudness(),
            on.confidence()));
  }
}
