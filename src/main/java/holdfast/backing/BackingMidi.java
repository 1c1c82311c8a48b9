package holdfast.backing;

import holdfast.chart.ChordSpan;
import holdfast.disk.WholeFile;
import holdfast.theory.Key;
import holdfast.theory.Mode;
import holdfast.time.Metre;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;

/**
 * A performance as a Standard MIDI File 1.0 of format 1: tempo, metre, key and, as markers, bar 1
 * and the chords in the first track, then a track for each part. Tick 0 is the first count; bar
 * lines fall where the metre says, a pick-up filling the bar in front of bar 1.
 */
public final class BackingMidi {

  /** Ticks in a quarter note: divides by all that we play, and by most that others write. */
  static final int TICKS_PER_QUARTER = 480;

  private static final int FORMAT_WITH_TRACKS = 1;

  // Meta events of the Standard MIDI File specification.
  private static final int TRACK_NAME = 0x03;
  private static final int MARKER = 0x06;
  private static final int TEMPO = 0x51;
  private static final int TIME_SIGNATURE = 0x58;
  private static final int KEY_SIGNATURE = 0x59;

  private BackingMidi() {}

  /** Writes the performance to this file, whole or not at all. */
  public static void write(Performance performance, Path file) {
    Sequence sequence = sequence(performance);
    WholeFile.write(file, fresh -> MidiSystem.write(sequence, FORMAT_WITH_TRACKS, fresh.toFile()));
  }

  /** The performance as a sequence. */
  public static Sequence sequence(Performance performance) {
    try {
      return new Writing(performance).sequence();
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException("our own MIDI messages are valid", e);
    }
  }

  /** How far beat 0 is into the file, in beats: whole bars, so that bar lines are right. */
  static double leadBeats(Performance performance) {
    int bar = performance.arrangement().metre().beats();
    return Math.ceil(-performance.firstBeat() / bar) * bar;
  }

  private static final class Writing {
    private final Performance performance;
    private final Arrangement arrangement;
    private final Metre metre;
    private final double lead;
    private final Sequence sequence;

    Writing(Performance performance) throws InvalidMidiDataException {
      this.performance = performance;
      this.arrangement = performance.arrangement();
      this.metre = arrangement.metre();
      this.lead = leadBeats(performance);
      this.sequence = new Sequence(Sequence.PPQ, TICKS_PER_QUARTER);
    }

    Sequence sequence() throws InvalidMidiDataException {
      head(sequence.createTrack());
      List<BackingEvent> events = performance.events();
      for (Seat seat : Seat.band(arrangement.feel())) {
        if (isPlayed(seat.part())) {
          part(sequence.createTrack(), seat, events);
        }
      }
      return sequence;
    }

    private boolean isPlayed(Part part) {
      boolean silentLine = part == Part.LINE && performance.line().isEmpty();
      return !silentLine && !performance.muted().contains(part);
    }

    private long tick(double beat) {
      return Math.round((beat + lead) * metre.quartersPerBeat() * TICKS_PER_QUARTER);
    }

    private void head(Track track) throws InvalidMidiDataException {
      add(track, 0, text(TRACK_NAME, arrangement.chart().title()));
      add(track, 0, tempo());
      // The two last numbers: a metronome click a beat, and 8 thirty-seconds to the quarter.
      byte[] signature = {
        (byte) metre.beats(),
        (byte) Integer.numberOfTrailingZeros(metre.unit()),
        (byte) Math.max(1, Math.round(24 * metre.quartersPerBeat())),
        8
      };
      add(track, 0, meta(TIME_SIGNATURE, signature));
      Optional<Key> key = arrangement.chart().sounding().key();
      if (key.isPresent() && Math.abs(key.get().fifths()) <= 7) {
        add(track, 0, meta(KEY_SIGNATURE, signature(key.get())));
      }
      // Whoever records a take over this file lays it over the chart by this marker.
      add(track, tick(0), text(MARKER, "Bar " + arrangement.bars().first()));
      double end = performance.lastBeat().orElseThrow();
      double start = -arrangement.pickupBeats();
      Route route = performance.route();
      for (Optional<BarPlace> here = Optional.of(route.first()); here.isPresent(); ) {
        for (ChordSpan span : arrangement.chordsOf(here.get())) {
          add(track, tick(start + span.startBeat()), text(MARKER, span.harmony().text()));
        }
        start += arrangement.lengthOf(here.get());
        here = route.after(here.get());
      }
      // Keeps the last bar whole for whoever reads the file.
      add(track, tick(end), text(MARKER, "end"));
    }

    private MetaMessage tempo() throws InvalidMidiDataException {
      double quarters = arrangement.tempo() * metre.quartersPerBeat();
      int micros = (int) Math.min(0xFFFFFF, Math.round(60_000_000 / quarters));
      return meta(TEMPO, new byte[] {(byte) (micros >> 16), (byte) (micros >> 8), (byte) micros});
    }

    /** MIDI knows major and minor; a mode takes the one whose third it has. */
    private static byte[] signature(Key key) {
      boolean minor = key.mode() != Mode.MAJOR && key.mode().hasMinorThird();
      return new byte[] {(byte) key.fifths(), (byte) (minor ? 1 : 0)};
    }

    private void part(Track track, Seat seat, List<BackingEvent> events)
        throws InvalidMidiDataException {
      add(track, 0, text(TRACK_NAME, name(seat.part())));
      for (MidiMessage message : seat.messages()) {
        add(track, 0, message);
      }
      for (BackingEvent event : events) {
        if (event.part() == seat.part()) {
          add(track, tick(event.endBeats()), Seat.end(seat, event));
        }
      }
      // Notes that end at a tick come before those that begin there, or the new ones would end.
      for (BackingEvent event : events) {
        if (event.part() == seat.part()) {
          add(track, tick(event.onsetBeats()), Seat.begin(seat, event));
        }
      }
    }

    private static String name(Part part) {
      return switch (part) {
        case CHORDS -> "Chords";
        case BASS -> "Bass";
        case TIME -> "Time";
        case LINE -> "Line";
      };
    }

    private static MetaMessage text(int type, String text) throws InvalidMidiDataException {
      return meta(type, text.getBytes(StandardCharsets.UTF_8));
    }

    private static MetaMessage meta(int type, byte[] bytes) throws InvalidMidiDataException {
      return new MetaMessage(type, bytes, bytes.length);
    }

    private static void add(Track track, long tick, MidiMessage message) {
      track.add(new MidiEvent(message, tick));
    }
  }
}
