package holdfast.practice;

import holdfast.backing.Playback;
import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.Note;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.Supplier;

/**
 * Hands on a test cable: they press keys on the beats that a test asks for, step by step with the
 * output's time. What they play goes through the JDK's MIDI door and our keyboard.
 */
public final class Hands implements NoteSource {

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  /** Fingers lift before the next note. */
  private static final double ARTICULATION = 0.85;

  private static final long USUAL_STEP_MICROS = 10_000;

  /** A key that goes down or up. */
  private record Stroke(double beat, int status, int key) {}

  private final NoteSource keyboard = new Keyboard(TestCable.NAME);
  private final SteppedOut out;
  private final long stepMicros;
  private final Supplier<Playback> playback;
  private final PriorityQueue<Stroke> strokes =
      new PriorityQueue<>(
          Comparator.comparingDouble(Stroke::beat).thenComparingInt(Stroke::status));

  /** Hands that play to what is played through this output. */
  public Hands(SteppedOut out, Supplier<Playback> playback) {
    this(out, USUAL_STEP_MICROS, playback);
  }

  /** The same, in steps of so many microseconds of music. */
  public Hands(SteppedOut out, long stepMicros, Supplier<Playback> playback) {
    this.out = out;
    this.stepMicros = stepMicros;
    this.playback = playback;
  }

  /** Plays these notes, in beats of the take; to be asked for on the session's thread. */
  public void play(List<Note> notes) {
    for (Note note : notes) {
      strokes.add(new Stroke(note.onsetBeats(), NOTE_ON, note.pitch()));
      double end = note.onsetBeats() + ARTICULATION * note.durationBeats();
      strokes.add(new Stroke(end, NOTE_OFF, note.pitch()));
    }
  }

  @Override
  public String name() {
    return keyboard.name();
  }

  @Override
  public Capture open(TakeClock clock) {
    Capture ear = keyboard.open(clock);
    return new Capture() {
      @Override
      public Heard await(Duration atMost) throws InterruptedException {
        out.step(stepMicros);
        double beat = playback.get().clock().beatAt(System.nanoTime());
        while (!strokes.isEmpty() && strokes.peek().beat() <= beat) {
          Stroke stroke = strokes.remove();
          TestCable.send(stroke.status(), stroke.key(), 80);
        }
        return ear.await(Duration.ZERO);
      }

      @Override
      public boolean isListening() {
        return ear.isListening();
      }

      @Override
      public long lost() {
        return ear.lost();
      }

      @Override
      public void close() {
        ear.close();
      }
    };
  }
}
