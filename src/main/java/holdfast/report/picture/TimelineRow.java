package holdfast.report.picture;

import holdfast.chart.ChordSpan;
import holdfast.harmony.NoteRole;
import java.util.List;
import java.util.Optional;

/**
 * Some bars of one chorus with all that sounded in them.
 *
 * @param firstBar the number of its first bar in the form
 * @param startBeat where its first bar line is, in beats of the take
 * @param bars how many bars it holds
 * @param beatsInBar beats in each
 * @param leadBeats beats of a pick-up that are shown before its first bar line
 * @param chords the chords that sound, in beats of the take
 * @param notes the notes, in order of onset
 * @param lowest the lowest pitch of the picture, MIDI
 * @param highest the highest pitch of the picture, MIDI
 * @param voice how high the voice stood all along, one list for each stretch without a gap; empty
 *     where nobody sang or no sound is there
 */
public record TimelineRow(
    int firstBar,
    double startBeat,
    int bars,
    int beatsInBar,
    double leadBeats,
    List<ChordSpan> chords,
    List<Sounding> notes,
    int lowest,
    int highest,
    List<List<Voice>> voice) {

  /**
   * A note that comes less early than this was meant on its beat, and stands in the row of that.
   */
  public static final double EARLY_BEATS = 0.12;

  /**
   * Where a voice stood at a moment.
   *
   * @param beat in beats of the take
   * @param pitch the MIDI pitch with its fraction
   */
  public record Voice(double beat, double pitch) {}

  /**
   * A note as it was played.
   *
   * @param onset in beats of the take
   * @param duration in beats
   * @param pitch the nearest MIDI note
   * @param cents how far over it the note was sung; 0 from a keyboard
   * @param role what it does over its chord
   * @param mark how its phrase is marked
   * @param entry for the first note of a phrase: milliseconds after its beat, where it has one
   */
  public record Sounding(
      double onset,
      double duration,
      int pitch,
      double cents,
      NoteRole role,
      Mark mark,
      Optional<Double> entry) {}

  /** Copies. */
  public TimelineRow {
    chords = List.copyOf(chords);
    notes = List.copyOf(notes);
    voice = voice.stream().map(List::copyOf).toList();
  }

  /** Where the picture begins. */
  double fromBeat() {
    return startBeat - leadBeats;
  }

  /** Whether a note that sounds here begins here, and not in the row before. */
  public boolean begins(Sounding note) {
    return note.onset() >= fromBeat() - EARLY_BEATS;
  }

  double endBeat() {
    return startBeat + (double) bars * beatsInBar;
  }
}
