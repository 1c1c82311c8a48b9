package holdfast.window;

import holdfast.backing.SoundPlayer;
import holdfast.listening.Capture;
import holdfast.listening.PlayEvent;
import holdfast.mistake.UserMistake;
import holdfast.session.input.ReadyInput;
import holdfast.window.play.TakeRequest;
import java.time.Duration;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** Listens before a take, so that the player sees whether they are heard. */
final class EarCheck {

  private static final Duration LOOK = Duration.ofMillis(20);

  /** What of the level is left at each look after a note has ended. */
  private static final double FALL = 0.85;

  private final Devices devices;
  private final TakeRequest.Who who;
  private final Thread thread = new Thread(this::run, "holdfast-ear-check");
  private volatile boolean stopped;
  private volatile boolean hearing;
  private volatile boolean listening = true;
  private volatile double level;
  private volatile boolean everHeard;
  private volatile Optional<String> trouble = Optional.empty();

  EarCheck(Devices devices, TakeRequest.Who who) {
    this.devices = devices;
    this.who = who;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /**
   * By word, not by interrupting: the Fourier transform's own threads would take that for theirs.
   */
  void stop() {
    stopped = true;
  }

  boolean isHearing() {
    return hearing;
  }

  boolean isListening() {
    return listening;
  }

  boolean hasHeard() {
    return everHeard;
  }

  double level() {
    return level;
  }

  Optional<String> trouble() {
    return trouble;
  }

  private void run() {
    long start = System.nanoTime();
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      ReadyInput input = devices.input(who).in(devices.around(band));
      try (Capture ear = input.source().open(nano -> (nano - start) / 1e9)) {
        Set<Integer> sounding = new HashSet<>();
        while (!stopped) {
          for (PlayEvent event : ear.await(LOOK).events()) {
            if (event instanceof PlayEvent.NoteOn on) {
              sounding.add(on.pitch());
              level = Math.max(level, on.loudness());
              everHeard = true;
            } else {
              sounding.remove(event.pitch());
            }
          }
          hearing = !sounding.isEmpty();
          listening = ear.isListening();
          level = level * (hearing ? 1 : FALL);
        }
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    } catch (UserMistake e) {
      listening = false;
      trouble = Optional.of(e.getMessage());
    }
  }
}
