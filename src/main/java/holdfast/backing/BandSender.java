package holdfast.backing;

import holdfast.backing.sound.Messages;
import holdfast.backing.sound.SoundOut;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleToLongFunction;

/**
 * The notes that wait, and how each is sent when its time has come. They wait in beats, so that a
 * change of tempo moves what is still to come. One thread cues and sends; parts may be muted by
 * any.
 */
final class BandSender {

  /** A note later than this is heard as late. */
  private static final long TOO_LATE_MICROS = 30_000;

  /** Less than this is not worth coming in for. */
  private static final long WORTH_SOUNDING_MICROS = 150_000;

  private final SoundOut out;
  private final DoubleToLongFunction micros;
  private final Map<Part, Seat> seats = new EnumMap<>(Part.class);
  private final PriorityQueue<Cue> cues = new PriorityQueue<>();
  private final double[][] soundingUntil = new double[16][128];
  private final Set<Part> muted = ConcurrentHashMap.newKeySet();
  private final Lateness.Meter lateness = new Lateness.Meter();

  /**
   * A note that begins or ends.
   *
   * @param beat when
   */
  private record Cue(double beat, BackingEvent event, boolean begins) implements Comparable<Cue> {

    /** At one beat, notes end before others begin. */
    @Override
    public int compareTo(Cue other) {
      int byBeat = Double.compare(beat, other.beat);
      return byBeat != 0 ? byBeat : Boolean.compare(begins, other.begins);
    }
  }

  /**
   * @param micros the output's position at a beat, as it is known now
   */
  BandSender(SoundOut out, Feel feel, Set<Part> muted, DoubleToLongFunction micros) {
    this.out = out;
    this.micros = micros;
    this.muted.addAll(muted);
    for (double[] channel : soundingUntil) {
      Arrays.fill(channel, Double.NEGATIVE_INFINITY);
    }
    for (Seat seat : Seat.band(feel)) {
      seats.put(seat.part(), seat);
    }
  }

  /** The band takes its seats at this position. */
  void seat(long positionMicros) {
    for (Seat seat : seats.values()) {
      seat.messages().forEach(message -> out.send(message, positionMicros));
      sendVolume(seat, positionMicros);
    }
  }

  void cue(BackingEvent event) {
    cues.add(new Cue(event.onsetBeats(), event, true));
  }

  /** The beat of the note that is due next; empty where none waits. */
  OptionalDouble nextBeat() {
    return cues.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(cues.peek().beat());
  }

  /** From this beat on nothing more begins. */
  void endAt(double beat) {
    cues.removeIf(cue -> cue.begins() && cue.beat() >= beat);
  }

  void sendDue(long now) {
    while (!cues.isEmpty()) {
      long position = micros.applyAsLong(cues.peek().beat());
      long due = out.nanoTimeToSend(position);
      if (due > now) {
        return;
      }
      lateness.add(System.nanoTime() - due);
      Cue cue = cues.remove();
      if (cue.begins()) {
        begin(cue.event(), position);
      } else {
        end(cue, position);
      }
    }
  }

  private void begin(BackingEvent event, long position) {
    long made = out.madeMicros();
    if (made - position > TOO_LATE_MICROS) {
      long left = micros.applyAsLong(event.endBeats()) - made;
      if (event.part() == Part.TIME || left < WORTH_SOUNDING_MICROS) {
        return;
      }
    }
    int channel = seats.get(event.part()).channel();
    int pitch = event.pitch();
    if (soundingUntil[channel][pitch] > event.onsetBeats()) {
      out.send(Messages.noteOff(channel, pitch), position);
    }
    soundingUntil[channel][pitch] = event.endBeats();
    cues.add(new Cue(event.endBeats(), event, false));
    out.send(Messages.noteOn(channel, pitch, event.velocity()), position);
  }

  private void end(Cue cue, long position) {
    int channel = seats.get(cue.event().part()).channel();
    int pitch = cue.event().pitch();
    // Where the same note was struck again meanwhile, this end is no longer its end.
    if (soundingUntil[channel][pitch] == cue.beat()) {
      out.send(Messages.noteOff(channel, pitch), position);
      soundingUntil[channel][pitch] = Double.NEGATIVE_INFINITY;
    }
  }

  /** A part falls silent, or is heard again, from now on. */
  void mute(Part part, boolean silent) {
    if (silent ? muted.add(part) : muted.remove(part)) {
      sendVolume(seats.get(part), out.madeMicros());
    }
  }

  private void sendVolume(Seat seat, long position) {
    int volume = muted.contains(seat.part()) ? 0 : seat.volume();
    out.send(Messages.channelVolume(seat.channel(), volume), position);
  }

  /** All parts are silent at once. */
  void silence() {
    seats.values().forEach(seat -> out.silence(seat.channel()));
  }

  Lateness lateness() {
    return lateness.soFar();
  }
}
