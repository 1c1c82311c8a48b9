package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.TakePart.PedalMove;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Hears the notes of one track, channel by channel. */
final class TrackNotes implements TrackWalk.Visitor {

  /** A take of one day has fewer notes; more are rubbish that would only fill memory. */
  private static final int MOST_NOTES = 200_000;

  /** Nobody plays for longer; a note beyond says that a time in the file is wrong. */
  private static final double LONGEST_SECONDS = 24 * 3600.0;

  /** A note that is never ended lasts to the next onset that is at least so much later. */
  private static final double NEXT_ONSET_SECONDS = 0.05; // closer ones belong to the same chord

  private final String file;
  private final int track;
  private final FileClock clock;
  private final Channel[] channels = new Channel[16];
  private final int notesBefore;
  private int count;
  private double endSeconds;

  /**
   * An ear for one track.
   *
   * @param notesBefore how many notes the tracks before it hold
   */
  TrackNotes(String file, int track, FileClock clock, int notesBefore) {
    this.count = notesBefore;
    this.notesBefore = notesBefore;
    this.file = file;
    this.track = track;
    this.clock = clock;
  }

  @Override
  public void message(long tick, int offset, int status, int data1, int data2) {
    double seconds = clock.secondsAt(tick);
    int kind = status & 0xF0;
    if (kind == ChannelNotes.NOTE_ON && data2 > 0) {
      count++;
      if (count > MOST_NOTES || seconds > LONGEST_SECONDS) {
        throw MidiFileException.at(
            file,
            "track " + track,
            offset,
            count > MOST_NOTES
                ? "there are more than " + MOST_NOTES + " notes in the file"
                : "a note here starts later than a whole day into the take",
            "export the take again, alone and from its start");
      }
    }
    if (seconds <= LONGEST_SECONDS) {
      endSeconds = seconds;
    }
    int i = status & 0x0F;
    if (channels[i] == null) {
      channels[i] = new Channel();
    }
    channels[i].message(endSeconds, kind, data1, data2);
  }

  @Override
  public void end(long tick) {
    endSeconds = Math.max(endSeconds, Math.min(clock.secondsAt(tick), LONGEST_SECONDS));
  }

  /** How many notes of the track were begun. */
  int count() {
    return count - notesBefore;
  }

  /** The channels that play a note, under the track's name. */
  List<TakePart> parts(String name) {
    List<TakePart> parts = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      if (channels[i] != null) {
        List<PlayedNote> notes = channels[i].notes(endSeconds);
        if (!notes.isEmpty()) {
          parts.add(
              new TakePart(track, i + 1, name, channels[i].program, notes, channels[i].pedal));
        }
      }
    }
    return parts;
  }

  /** What was amiss, after {@link #parts}. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      int stuck = channels[i] == null ? 0 : channels[i].stuck.size();
      if (stuck > 0) {
        remarks.add(
            (stuck == 1 ? "1 note" : stuck + " notes")
                + " of track "
                + track
                + ", channel "
                + (i + 1)
                + ", never ended and last to the next note");
      }
    }
    return remarks;
  }

  /** One channel of the track. */
  private static final class Channel implements ChannelNotes.Hearer {
    private final ChannelNotes channel = new ChannelNotes(this);
    private final List<PlayedNote> notes = new ArrayList<>();
    private final List<PlayedNote> stuck = new ArrayList<>();
    private final List<PedalMove> pedal = new ArrayList<>();
    private OptionalInt program = OptionalInt.empty();
    private boolean isOver;

    void message(double seconds, int kind, int data1, int data2) {
      if (kind == ChannelNotes.PROGRAM) {
        if (program.isEmpty() || notes.isEmpty()) {
          program = OptionalInt.of(data1);
        }
      } else {
        channel.message(seconds, kind, data1, data2);
      }
    }

    @Override
    public void ended(int key, PlayedNote note) {
      (isOver ? stuck : notes).add(note);
    }

    @Override
    public void pedal(double seconds, boolean down) {
      boolean was = !pedal.isEmpty() && pedal.get(pedal.size() - 1).down();
      if (was != down) {
        pedal.add(new PedalMove(seconds, down));
      }
    }

    List<PlayedNote> notes(double endSeconds) {
      isOver = true;
      channel.finish(endSeconds);
      List<PlayedNote> all = new ArrayList<>(notes);
      for (PlayedNote note : stuck) {
        double next =
            Stream.concat(notes.stream(), stuck.stream())
                .mapToDouble(PlayedNote::onsetSeconds)
                .filter(onset -> onset >= note.onsetSeconds() + NEXT_ONSET_SECONDS)
                .min()
                .orElse(note.endSeconds());
        all.add(
            new PlayedNote(
                note.onsetSeconds(),
                Math.min(next, note.endSeconds()) - note.onsetSeconds(),
                note.pitch(),
                note.cents(),
                note.loudness(),
                note.confidence()));
      }
      return all;
    }
  }
}
