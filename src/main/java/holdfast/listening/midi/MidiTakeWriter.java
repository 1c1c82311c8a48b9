package holdfast.listening.midi;

import holdfast.disk.WholeFile;
import holdfast.listening.PlayedNote;
import holdfast.listening.midi.RecordedTake.KeyChange;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.RecordedTake.MetreChange;
import holdfast.listening.midi.TakePart.PedalMove;
import holdfast.listening.midi.TrackBytes.Turn;
import holdfast.time.Metre;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Writes a take as a Standard MIDI File of format 1 that any notation program opens: a first track
 * with title, tempo, metre, key and markers, then a track for each part.
 *
 * <p>What is read back is the same within a tick of {@value #TICKS_PER_QUARTER} to the quarter note
 * (half a millisecond at 60), a loudness within a velocity, cents within a step of the bend. A note
 * that goes on when its key is struck again ends there. How sure an ear was of a note has no place
 * in a MIDI file and is not kept.
 */
public final class MidiTakeWriter {

  /** Fine enough for what a hand plays, and a multiple of what others count in. */
  static final int TICKS_PER_QUARTER = 1920;

  // Meta events of Standard MIDI Files 1.0.
  private static final int TEXT = 0x01;
  private static final int NAME = 0x03;
  private static final int MARKER = 0x06;
  private static final int CUE = 0x07;
  private static final int TEMPO = 0x51;
  private static final int METRE = 0x58;
  private static final int KEY = 0x59;

  private static final int BEND_STEPS = 8192;

  /** Cents that a hand or ear cannot tell from none; a keyboard's notes need no bend. */
  private static final double IN_TUNE_CENTS = 0.01;

  private final RecordedTake take;
  private final TempoTicks ticks;

  private MidiTakeWriter(RecordedTake take) {
    this.take = take;
    this.ticks = new TempoTicks(take.tempo(), TICKS_PER_QUARTER);
  }

  /**
   * Writes the take, whole or not at all: what stood at this place before stays until the new file
   * is safely there.
   *
   * @throws MidiFileException where nothing can be written there
   */
  public static void write(RecordedTake take, Path file) {
    WholeFile.write(file, bytes(take));
  }

  /** The file in memory. */
  public static byte[] bytes(RecordedTake take) {
    return new MidiTakeWriter(take).file();
  }

  private byte[] file() {
    List<TrackBytes> tracks = new ArrayList<>();
    tracks.add(conductor());
    for (TakePart part : take.parts()) {
      tracks.add(part(part));
    }
    long end = tracks.stream().mapToLong(TrackBytes::lastTick).max().orElse(0);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] header = {
      0,
      1, // several tracks, played together
      (byte) (tracks.size() >> 8),
      (byte) tracks.size(),
      (byte) (TICKS_PER_QUARTER >> 8),
      (byte) TICKS_PER_QUARTER
    };
    out.writeBytes(TrackBytes.chunk("MThd", header));
    tracks.forEach(track -> out.writeBytes(track.chunk(end)));
    return out.toByteArray();
  }

  private TrackBytes conductor() {
    TrackBytes track = new TrackBytes();
    take.title().ifPresent(title -> track.text(0, NAME, title));
    if (take.tempoIsWritten()) {
      for (FileClock.TempoChange change : ticks.changes()) {
        int micros = change.microsPerQuarter();
        track.meta(
            change.tick(), TEMPO, (byte) (micros >> 16), (byte) (micros >> 8), (byte) micros);
      }
    }
    for (MetreChange change : take.metres()) {
      Metre metre = change.metre();
      track.meta(
          ticks.tickOfQuarter(change.quarters()),
          METRE,
          (byte) metre.beats(),
          (byte) Integer.numberOfTrailingZeros(metre.unit()),
          (byte) clocksToAClick(metre),
          (byte) 8); // thirty-seconds in a quarter note
    }
    for (KeyChange change : take.keys()) {
      track.meta(
          ticks.tickOfQuarter(change.quarters()),
          KEY,
          (byte) change.fifths(),
          (byte) (change.minor() ? 1 : 0));
    }
    for (Mark mark : take.marks()) {
      int type =
          switch (mark.kind()) {
            case MARKER -> MARKER;
            case CUE -> CUE;
            case TEXT -> TEXT;
          };
      track.text(ticks.tickOfQuarter(mark.quarters()), type, mark.text());
    }
    return track;
  }

  /** 24 clocks are a quarter note; compound metres click in threes. */
  private static int clocksToAClick(Metre metre) {
    boolean isCompound = metre.unit() >= 8 && metre.beats() % 3 == 0;
    return Math.max(1, 96 / metre.unit() * (isCompound ? 3 : 1));
  }

  private TrackBytes part(TakePart part) {
    TrackBytes track = new TrackBytes();
    int channel = part.channel() - 1;
    if (!part.name().isEmpty()) {
      track.text(0, NAME, part.name());
    }
    part.program().ifPresent(program -> track.program(part.channel(), program));
    for (PedalMove move : part.pedal()) {
      track.message(
          ticks.tickOfSecond(move.seconds()),
          Turn.SETTING,
          ChannelNotes.CONTROL | channel,
          ChannelNotes.SUSTAIN,
          move.down() ? 127 : 0);
    }
    boolean isBent = part.notes().stream().anyMatch(n -> Math.abs(n.cents()) > IN_TUNE_CENTS);
    if (isBent) {
      bendRange(track, channel);
    }
    long[] struckNext = new long[128];
    Arrays.fill(struckNext, Long.MAX_VALUE);
    for (int i = part.notes().size() - 1; i >= 0; i--) {
      PlayedNote note = part.notes().get(i);
      int key = note.pitch();
      long from = ticks.tickOfSecond(note.onsetSeconds());
      long to = Math.max(from + 1, ticks.tickOfSecond(note.endSeconds()));
      int velocity = (int) Math.max(1, Math.min(127, Math.round(note.loudness() * 127)));
      if (isBent) {
        bend(track, from, channel, note.cents());
      }
      track.message(from, Turn.NOTE_ON, ChannelNotes.NOTE_ON | channel, key, velocity);
      track.message(
          Math.min(to, struckNext[key]), Turn.NOTE_OFF, ChannelNotes.NOTE_OFF | channel, key, 64);
      struckNext[key] = from;
    }
    return track;
  }

  private static void bend(TrackBytes track, long tick, int channel, double cents) {
    long steps = Math.round(cents * BEND_STEPS / ChannelNotes.DEFAULT_BEND_CENTS);
    int wheel = BEND_STEPS + (int) steps;
    track.message(tick, Turn.SETTING, ChannelNotes.PITCH_BEND | channel, wheel & 0x7F, wheel >> 7);
  }

  /** Registered parameter 0, the bend range, said out loud for instruments that start otherwise. */
  private static void bendRange(TrackBytes track, int channel) {
    int control = ChannelNotes.CONTROL | channel;
    track.message(0, Turn.SETTING, control, ChannelNotes.RPN_COARSE, 0);
    track.message(0, Turn.SETTING, control, ChannelNotes.RPN_FINE, 0);
    int semitones = ChannelNotes.DEFAULT_BEND_CENTS / 100;
    track.message(0, Turn.SETTING, control, ChannelNotes.DATA_ENTRY, semitones);
  }
}
