package holdfast.listening.midi;

import holdfast.listening.midi.MidiChunks.TrackChunk;
import holdfast.listening.midi.RecordedTake.KeyChange;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.RecordedTake.MarkKind;
import holdfast.listening.midi.RecordedTake.MetreChange;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reads one take, in two walks through its tracks: the first checks the file and gathers what holds
 * for all tracks (tempo, metre, names), the second hears the notes with the clock that results.
 */
final class TakeReading {

  /** Marks beyond this many are left out: no piece has so many places with a name. */
  private static final int MOST_MARKS = 20_000;

  /** More tempo changes than this are not a tempo but rubbish. */
  private static final int MOST_TEMPO_CHANGES = 100_000;

  private final String file;
  private final byte[] bytes;
  private final boolean keepWhatIsWhole;
  private final MidiChunks chunks;
  private final TrackWalk walk;
  private final List<String> remarks;

  private final List<FileClock.TempoChange> tempi = new ArrayList<>();
  private final List<AtTick<Metre>> metres = new ArrayList<>();
  private final List<AtTick<KeyChange>> keys = new ArrayList<>();
  private final List<AtTick<MarkText>> marks = new ArrayList<>();
  private final String[] names;
  private final String[] instruments;

  private record AtTick<T>(long tick, T what) {}

  private record MarkText(MarkKind kind, String text) {}

  TakeReading(String file, byte[] bytes, boolean keepWhatIsWhole) {
    this.file = file;
    this.bytes = bytes;
    this.keepWhatIsWhole = keepWhatIsWhole;
    this.chunks = MidiChunks.of(file, bytes);
    this.walk = new TrackWalk(file, bytes);
    this.remarks = new ArrayList<>(chunks.remarks());
    this.names = new String[chunks.tracks().size()];
    this.instruments = new String[names.length];
    Arrays.fill(names, "");
    Arrays.fill(instruments, "");
  }

  RecordedTake take() {
    for (TrackChunk track : chunks.tracks()) {
      FirstWalk first = new FirstWalk(track);
      TrackWalk.Ending ending = walk.walk(track, first);
      acceptEnding(track, ending, first);
    }
    tempi.sort(Comparator.comparingLong(FileClock.TempoChange::tick));
    FileClock clock = new FileClock(chunks.division(), tempi);
    List<TakePart> parts = new ArrayList<>();
    int notesBefore = 0;
    for (TrackChunk track : chunks.tracks()) {
      TrackNotes notes = new TrackNotes(file, track.number(), clock, notesBefore);
      walk.walk(track, notes);
      notesBefore += notes.count();
      String name = names[track.number() - 1];
      parts.addAll(notes.parts(name.isEmpty() ? instruments[track.number() - 1] : name));
      remarks.addAll(notes.remarks());
    }
    return new RecordedTake(
        file,
        // By the standard the first track's name is that of the piece.
        Optional.of(names[0]).filter(name -> !name.isEmpty()),
        parts,
        clock.tempo(),
        !tempi.isEmpty(),
        inOrder(metres).map(m -> new MetreChange(clock.quartersAt(m.tick()), m.what())).toList(),
        inOrder(keys)
            .map(
                k -> new KeyChange(clock.quartersAt(k.tick()), k.what().fifths(), k.what().minor()))
            .toList(),
        inOrder(marks)
            .map(
                m ->
                    new Mark(
                        clock.quartersAt(m.tick()),
                        clock.secondsAt(m.tick()),
                        m.what().kind(),
                        m.what().text()))
            .toList(),
        remarks);
  }

  private static <T> Stream<AtTick<T>> inOrder(List<AtTick<T>> list) {
    return list.stream().sorted(Comparator.comparingLong(AtTick::tick));
  }

  private void acceptEnding(TrackChunk track, TrackWalk.Ending ending, FirstWalk first) {
    if (ending == TrackWalk.Ending.WHOLE) {
      return;
    }
    boolean onlyTheEndIsMissing = ending == TrackWalk.Ending.CUT_BETWEEN_EVENTS && first.down == 0;
    if (onlyTheEndIsMissing || keepWhatIsWhole) {
      remarks.add(
          "the file is cut off in track "
              + track.number()
              + " at byte "
              + track.to()
              + "; what is before it was read");
      return;
    }
    throw MidiFileException.at(
        file,
        "track " + track.number(),
        track.to(),
        "the file is cut off here and should go on to byte "
            + track.promisedTo()
            + (first.whole == 1
                ? " (1 note of this track is whole)"
                : " (" + first.whole + " notes of this track are whole)"),
        "copy or export it again");
  }

  /** Checks a track, counts its notes, and gathers what its meta events say. */
  private final class FirstWalk implements TrackWalk.Visitor {
    private final TrackChunk track;
    private final boolean[] isDown = new boolean[16 * 128];
    private int down;
    private int whole;
    private boolean zeroTempo;

    FirstWalk(TrackChunk track) {
      this.track = track;
    }

    @Override
    public void message(long tick, int offset, int status, int data1, int data2) {
      int kind = status & 0xF0;
      if (kind != ChannelNotes.NOTE_ON && kind != ChannelNotes.NOTE_OFF) {
        return;
      }
      int key = ((status & 0x0F) << 7) | data1;
      boolean on = kind == ChannelNotes.NOTE_ON && data2 > 0;
      if (on && !isDown[key]) {
        down++;
      } else if (!on && isDown[key]) {
        down--;
        whole++;
      }
      isDown[key] = on;
    }

    @Override
    public void meta(long tick, int offset, int type, int from, int length) {
      switch (type) {
        case 0x01 -> mark(tick, MarkKind.TEXT, from, length);
        case 0x03 -> name(names, from, length);
        case 0x04 -> name(instruments, from, length);
        case 0x06 -> mark(tick, MarkKind.MARKER, from, length);
        case 0x07 -> mark(tick, MarkKind.CUE, from, length);
        case 0x51 -> tempo(tick, offset, from, length);
        case 0x58 -> metre(tick, from, length);
        case 0x59 -> key(tick, from, length);
        default -> {
          // Lyrics, sequence numbers, SMPTE offsets and makers' own events say nothing we need.
        }
      }
    }

    private void mark(long tick, MarkKind kind, int from, int length) {
      if (marks.size() < MOST_MARKS) {
        String text = MidiText.of(bytes, from, length);
        if (!text.isEmpty()) {
          marks.add(new AtTick<>(tick, new MarkText(kind, text)));
        }
      }
    }

    private void name(String[] called, int from, int length) {
      if (!called[track.number() - 1].isEmpty()) {
        return;
      }
      String text = MidiText.of(bytes, from, length);
      called[track.number() - 1] = text;
    }

    private void tempo(long tick, int offset, int from, int length) {
      if (length < 3) {
        return;
      }
      int micros =
          ((bytes[from] & 0xFF) << 16) | ((bytes[from + 1] & 0xFF) << 8) | (bytes[from + 2] & 0xFF);
      if (micros == 0) {
        if (!zeroTempo) {
          zeroTempo = true;
          remarks.add("track " + track.number() + " names a tempo of 0, which was left out");
        }
        return;
      }
      if (tempi.size() == MOST_TEMPO_CHANGES) {
        throw MidiFileException.at(
            file,
            "track " + track.number(),
            offset,
            "there are more than " + MOST_TEMPO_CHANGES + " tempo changes",
            "export the take again with fewer");
      }
      tempi.add(new FileClock.TempoChange(tick, micros));
    }

    private void metre(long tick, int from, int length) {
      if (length >= 2 && metres.size() < MOST_MARKS) {
        int beats = bytes[from] & 0xFF;
        int power = bytes[from + 1] & 0xFF;
        if (beats >= 1 && beats <= 32 && power <= 5) {
          metres.add(new AtTick<>(tick, new Metre(beats, 1 << power)));
        }
      }
    }

    private void key(long tick, int from, int length) {
      if (length >= 2 && Math.abs(bytes[from]) <= 7 && keys.size() < MOST_MARKS) {
        keys.add(new AtTick<>(tick, new KeyChange(0, bytes[from], bytes[from + 1] == 1)));
      }
    }
  }
}
