package holdfast.session;

import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.ProcessCost;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.listening.keyboard.PlayableKeyboard;
import holdfast.motif.Player;
import holdfast.time.TakeClock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;

/**
 * How long after a phrase is known to have ended is its verdict out? Somebody plays a take on a
 * keyboard, in real time, through the whole live path; the clock stops when the audience is told.
 */
public final class VerdictBench {

  private VerdictBench() {}

  /**
   * What was measured.
   *
   * @param millis from the moment each phrase was known to have ended to its verdict, in order
   * @param steadyCpu of one core, from the first verdict to the last; a busy thread left out
   */
  public record Measured(List<Double> millis, double steadyCpu) {

    /** Copies. */
    public Measured {
      millis = List.copyOf(millis);
    }

    /** So much of the phrases, 0 to 1, had their verdict within this many milliseconds. */
    public double within(double share) {
      double[] sorted = millis.stream().mapToDouble(m -> m).sorted().toArray();
      if (sorted.length == 0) {
        return Double.NaN;
      }
      int index = (int) Math.ceil(share * sorted.length) - 1;
      return sorted[Math.max(0, Math.min(sorted.length - 1, index))];
    }
  }

  /**
   * Plays the notes over the performance and measures every verdict but those at the end.
   *
   * @param othersCpuNanos CPU time of threads that are not the session's, to be left out
   */
  public static Measured run(
      BackingPlayer band,
      Performance performance,
      List<PlayedNote> played,
      LongSupplier othersCpuNanos)
      throws InterruptedException {
    List<Cost> costs = new ArrayList<>();
    PlayableKeyboard keyboard = new PlayableKeyboard("bench");
    AtomicReference<TakeClock> takeClock = new AtomicReference<>(TakeClock.from(0));
    List<Double> millis = new ArrayList<>();
    Audience clock =
        new Audience() {
          @Override
          public void moment(Moment moment) {}

          @Override
          public void phrase(JudgedPhrase phrase) {
            double now = takeClock.get().secondsAt(System.nanoTime());
            millis.add(1e3 * (now - phrase.decidedSeconds()));
            costs.add(Cost.now(othersCpuNanos));
          }

          @Override
          public void notice(String sentence) {}

          @Override
          public Optional<Wish> wish() {
            return Optional.empty();
          }
        };
    LiveTake take =
        new LiveTake(
            performance.arrangement().chart(),
            Player.KEYBOARD,
            Optional.empty(),
            clock,
            Keeper.NOBODY);
    Thread hands = new Thread(() -> play(keyboard, played), "hands");
    hands.setDaemon(true);
    BackingPlayer watched = new WatchedBand(band, takeClock);
    hands.start();
    JudgedTake judged = take.play(watched, performance, keyboard);
    hands.interrupt();
    // The last phrase may be cut off by the end of the take: its silence was not waited for.
    int counted = Math.min(millis.size(), Math.max(0, judged.phrases().size() - 1));
    return new Measured(millis.subList(0, counted), Cost.share(costs));
  }

  /** What the program had cost by a moment, in nanoseconds of CPU time. */
  private record Cost(long atNanos, long cpuNanos) {
    static Cost now(LongSupplier others) {
      long cpu = ProcessCost.cpuNanos() - others.getAsLong();
      return new Cost(System.nanoTime(), cpu);
    }

    static double share(List<Cost> costs) {
      if (costs.size() < 2) {
        return Double.NaN;
      }
      Cost first = costs.get(0);
      Cost last = costs.get(costs.size() - 1);
      return (double) (last.cpuNanos() - first.cpuNanos()) / (last.atNanos() - first.atNanos());
    }
  }

  private static void play(PlayableKeyboard keyboard, List<PlayedNote> played) {
    while (!keyboard.isListenedTo()) {
      LockSupport.parkNanos(1_000_000);
    }
    PlayEvent[] events = Heard.recording(played).events().toArray(PlayEvent[]::new);
    double first = Arrays.stream(events).mapToDouble(PlayEvent::seconds).min().orElse(0);
    long zero = System.nanoTime() - (long) (first * 1e9);
    for (PlayEvent event : events) {
      long at = zero + (long) (event.seconds() * 1e9);
      while (System.nanoTime() < at) {
        LockSupport.parkNanos(at - System.nanoTime());
        if (Thread.currentThread().isInterrupted()) {
          return;
        }
      }
      keyboard.play(message(event));
    }
  }

  private static ShortMessage message(PlayEvent event) {
    try {
      return event instanceof PlayEvent.NoteOn on
          ? new ShortMessage(
              ShortMessage.NOTE_ON, on.pitch(), (int) Math.max(1, Math.rint(127 * on.loudness())))
          : new ShortMessage(ShortMessage.NOTE_OFF, event.pitch(), 0);
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException("a note that MIDI cannot say", e);
    }
  }

  /** Keeps the take's clock when the backing starts. */
  private record WatchedBand(BackingPlayer band, AtomicReference<TakeClock> takeClock)
      implements BackingPlayer {
    @Override
    public Playback start(Performance performance, long earliest) {
      Playback playback = band.start(performance, earliest);
      takeClock.set(LiveTake.clockOf(playback));
      return playback;
    }

    @Override
    public void setVolume(double volume) {
      band.setVolume(volume);
    }

    @Override
    public String output() {
      return band.output();
    }

    @Override
    public Optional<String> trouble() {
      return band.trouble();
    }

    @Override
    public void close() {
      band.close();
    }
  }
}
