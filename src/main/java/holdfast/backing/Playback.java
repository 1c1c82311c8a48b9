package holdfast.backing;

import holdfast.chart.Changes;
import holdfast.time.BeatClock;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A backing that is being played. All may be asked and told from any thread. */
public interface Playback extends AutoCloseable {

  /** Which beat is heard when. */
  BeatClock clock();

  /** The tempo so far and on from here: beat 0 at second 0, seconds of music. */
  TempoMap tempoMap();

  /** Whether it is still heard; count-in included. */
  boolean isRunning();

  /** Silence, now. */
  void stop();

  /**
   * Goes round these bars from the next bar line on, until {@link #goOn}. A drone stays a drone.
   */
  void loop(BarRange bars);

  /** Leaves the loop at its end. */
  void goOn();

  /**
   * Another tempo from the next bar line on.
   *
   * @param beatsPerMinute {@link Arrangement#SLOWEST} to {@link Arrangement#FASTEST}
   */
  void setTempo(double beatsPerMinute);

  /** Silences a part, or lets it be heard again. */
  void mute(Part part, boolean silent);

  /**
   * {@link Part#LINE} plays these notes, too, in beats of what is played. What comes too late to be
   * heard on time is left out.
   */
  void say(List<BackingEvent> line);

  /**
   * The bar at a played beat: where in the form it is. Before the first bar that bar; of bars that
   * are not planned yet, the one that will come if nothing is changed.
   */
  BarPlace placeAt(double beat);

  /**
   * The first beat of the bar at a played beat; in the count-in the beat where the music starts.
   */
  double barStart(double beat);

  /** The beat at which all is over; empty as long as it goes round. */
  Optional<Double> lastBeat();

  /**
   * What sounds at each played beat. As long as nothing was looped these are the changes of the
   * form, round after round; else the way that was really taken, and one round on from here.
   */
  Changes changes();

  /**
   * Tells of every beat as it is heard, on the thread that schedules the notes; so do not wait in
   * there.
   */
  void onBeat(Consumer<BeatNotice> listener);

  /** How late the scheduling thread has been, so far. */
  Lateness lateness();

  /** Stops. */
  @Override
  default void close() {
    stop();
  }
}
