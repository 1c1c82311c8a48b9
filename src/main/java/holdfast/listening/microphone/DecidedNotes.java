package holdfast.listening.microphone;

import holdfast.listening.PlayEvent;
import holdfast.listening.pitch.Levels;
import holdfast.listening.pitch.NoteListener;
import holdfast.listening.pitch.Tuning;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import java.util.function.DoubleUnaryOperator;

/**
 * Turns what the ear finds into events of a take. The ear tells that a note begins as early as it
 * dares; it may then move it to where a scoop settles, or take it back. So that nothing that was
 * said is ever unsaid, a note is passed on when it has ended and all of it is known, and the
 * promise of what has arrived waits at the onset of the note that is open. No verdict comes later
 * for it: a phrase is not over while a note sounds.
 */
final class DecidedNotes implements NoteListener {

  /** Shortest length of a note, in seconds, whatever the clock of the take does meanwhile. */
  private static final double SHORTEST = 0.001;

  private final Tuning tuning;
  private final DoubleSupplier gateDb;
  private final List<PlayEvent> events = new ArrayList<>();
  private DoubleUnaryOperator takeSeconds = seconds -> seconds;
  private double openSince = Double.NaN;
  private double openCents;
  private double latest = Double.NEGATIVE_INFINITY;

  /**
   * Notes of one player.
   *
   * @param tuning the player's tuning as it is known beforehand
   * @param gateDb a note softer than this, in decibels under full scale, is the room
   */
  DecidedNotes(Tuning tuning, DoubleSupplier gateDb) {
    this.tuning = tuning;
    this.gateDb = gateDb;
  }

  /** From now on, seconds of the recording become seconds of the take like this. */
  void place(DoubleUnaryOperator secondsOfTake) {
    takeSeconds = secondsOfTake;
  }

  @Override
  public void began(double onsetSeconds, double cents, double levelDb) {
    openSince = onsetSeconds;
    openCents = cents;
  }

  @Override
  public void ended(
      double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence) {
    openSince = Double.NaN;
    if (levelDb < gateDb.getAsDouble()) {
      return;
    }
    int pitch = tuning.pitch(cents);
    tuning.hear(cents, endSeconds - onsetSeconds);
    double on = Math.max(latest, takeSeconds.applyAsDouble(onsetSeconds));
    double off = Math.max(on + SHORTEST, takeSeconds.applyAsDouble(endSeconds));
    latest = off;
    events.add(
        new PlayEvent.NoteOn(
            on,
            pitch,
            Math.max(-100, Math.min(100, cents - 100.0 * pitch)),
            Levels.loudness(levelDb),
            Math.max(0, Math.min(1, confidence))));
    events.add(new PlayEvent.NoteOff(off, pitch));
  }

  @Override
  public void takenBack() {
    openSince = Double.NaN;
  }

  /** The pitch of the note that sounds, in cents (A4 = 6900), as far as it is known. */
  OptionalDouble sounding() {
    return Double.isNaN(openSince) ? OptionalDouble.empty() : OptionalDouble.of(openCents);
  }

  /**
   * The second of the take up to which everything has been passed on.
   *
   * @param toldSeconds the second of the recording before which the ear has told every note
   */
  double promise(double toldSeconds) {
    double known = Double.isNaN(openSince) ? toldSeconds : Math.min(openSince, toldSeconds);
    latest = Math.max(latest, takeSeconds.applyAsDouble(known));
    return latest;
  }

  /** The events since the last time, in order. */
  List<PlayEvent> take() {
    List<PlayEvent> taken = List.copyOf(events);
    events.clear();
    return taken;
  }
}
