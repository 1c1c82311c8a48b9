package holdfast.window;

import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.mistake.UserMistake;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/** Plays something short beside the event thread: a chord, a phrase, a chart to be checked. */
public final class Aloud {

  /** How often it is looked whether the music is over. */
  private static final long LOOK_MILLIS = 40;

  /** The last chord may ring. */
  private static final long RING_MILLIS = 700;

  private Optional<Thread> player = Optional.empty();

  /** Plays; what was played before stops. */
  public void play(Performance performance, Devices devices, Consumer<String> trouble) {
    stop();
    Thread thread = new Thread(() -> run(performance, devices, trouble), "holdfast-aloud");
    thread.setDaemon(true);
    thread.start();
    player = Optional.of(thread);
  }

  /** Silence. */
  public void stop() {
    player.ifPresent(Thread::interrupt);
    player = Optional.empty();
  }

  /** Whether something sounds. */
  public boolean isPlaying() {
    return player.filter(Thread::isAlive).isPresent();
  }

  private static void run(Performance performance, Devices devices, Consumer<String> trouble) {
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      band.trouble().ifPresent(t -> SwingUtilities.invokeLater(() -> trouble.accept(t)));
      try (Playback playback = band.start(performance)) {
        while (playback.isRunning()) {
          Thread.sleep(LOOK_MILLIS);
        }
        Thread.sleep(RING_MILLIS);
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    } catch (UserMistake e) {
      SwingUtilities.invokeLater(() -> trouble.accept(e.getMessage()));
    }
  }
}
